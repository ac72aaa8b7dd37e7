import accepts from '@fastify/accepts'
import cors from '@fastify/cors'
import swagger from '@fastify/swagger'
import type { TypeBoxTypeProvider } from '@fastify/type-provider-typebox'
import Fastify, { type FastifyBaseLogger } from 'fastify'
import { pino } from 'pino'
import { asBuiltBox } from './api/as-built/route.ts'
import { boxTuning } from './api/box-tuning/route.ts'
import { contractOptions } from './api/contract.ts'
import { cutList } from './api/cut-list/route.ts'
import { designCheck } from './api/design-check/route.ts'
import { driverMeasurement } from './api/driver-measurement/route.ts'
import { health } from './api/health.ts'
import type { HeavyWork } from './api/heavy-work.ts'
import { readJsonBodies } from './api/json-body.ts'
import { loadImpedance } from './api/load-impedance/route.ts'
import { port } from './api/port/route.ts'
import { powerBudget } from './api/power-budget/route.ts'
import { answerBrokenConnection, answerError, answerProblems } from './api/problem-answers.ts'
import { BODY_LIMIT_BYTES } from './api/size-limits.ts'
import { pages } from './docs/pages.ts'
import { kiosk } from './kiosk/page.ts'
import { sharedSchemas } from './schema/shared.ts'
import { tools } from './tools/routes.ts'
import * as worker from './workers/worker.ts'

const HALF_A_MINUTE_MS = 30_000

export interface AppOptions {
  logLevel?: string
  /** How heavy work is run; without it, in the thread of the requests. */
  heavyWork?: HeavyWork
  /** Names under which chat bots may reach the service, besides localhost and addresses in digits. */
  allowedHosts?: readonly string[]
  /** Origins of other pages that may call the service; none when left out, `*` for any. */
  corsOrigins?: readonly string[]
  /** Where the built touch page lies; without it `/` leads to the documentation. */
  kioskFolder?: string
}

const inThisThread: HeavyWork = {
  cutList: async (body) => worker.cutList(body),
  cutListPdf: (printing) => worker.cutListPdf(printing),
  buildSheetPdf: (order) => worker.buildSheetPdf(order),
}

/** Without a strict preflight: a spreadsheet asks OPTIONS before every cell, and 400 kills the cell. */
const corsOptions = (origins: readonly string[]) => ({
  origin: origins.includes('*') ? '*' : [...origins],
  exposedHeaders: ['etag', 'retry-after'],
  strictPreflight: false,
})

/** Builds the server without opening a port: the contract, the problems, then one line a calculation. */
export async function buildApp({
  logLevel = 'silent',
  heavyWork = inThisThread,
  allowedHosts = [],
  corsOrigins = [],
  kioskFolder,
}: AppOptions = {}) {
  const log: FastifyBaseLogger = pino({ level: logLevel })
  const app = Fastify({
    loggerInstance: log,
    bodyLimit: BODY_LIMIT_BYTES,
    connectionTimeout: HALF_A_MINUTE_MS,
    requestTimeout: HALF_A_MINUTE_MS,
    genReqId: () => crypto.randomUUID(),
    frameworkErrors: answerError,
    clientErrorHandler: answerBrokenConnection,
  }).withTypeProvider<TypeBoxTypeProvider>()

  // Requests are read by `bodyReader`, which tells every fault; answers are typed, so plain JSON is enough.
  app.setValidatorCompiler(() => () => true)
  app.setSerializerCompiler(() => (answer) => JSON.stringify(answer))
  app.decorate('heavyWork', heavyWork)
  readJsonBodies(app)
  answerProblems(app)

  for (const schema of sharedSchemas()) app.addSchema(schema)
  await app.register(accepts)
  await app.register(swagger, contractOptions)
  if (corsOrigins.length > 0) await app.register(cors, corsOptions(corsOrigins))

  await app.register(designCheck)
  await app.register(boxTuning)
  await app.register(port)
  await app.register(loadImpedance)
  await app.register(powerBudget)
  await app.register(cutList)
  await app.register(driverMeasurement)
  await app.register(asBuiltBox)

  await app.register(tools, { allowedHosts })
  await app.register(pages)
  if (kioskFolder === undefined)
    app.get('/', { schema: { hide: true } }, (_request, reply) => reply.redirect('/docs'))
  else await app.register(kiosk, { folder: kioskFolder })
  await app.register(health)
  return app
}
