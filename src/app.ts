import accepts from '@fastify/accepts'
import cors from '@fastify/cors'
import swagger from '@fastify/swagger'
import type { TypeBoxTypeProvider } from '@fastify/type-provider-typebox'
import Fastify, { type FastifyBaseLogger, LogController } from 'fastify'
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
import { passExpectations } from './service/expectations.ts'
import { logAt, logRequests } from './service/log.ts'
import { countRequests } from './service/metrics.ts'
import { refuseTwoHosts } from './service/one-host.ts'
import { refuseWhenLate } from './service/overload.ts'
import { limitRates } from './service/rate-limit.ts'
import { markAnswers, requestId } from './service/request-ids.ts'
import { tools } from './tools/routes.ts'
import type { PoolLoad } from './workers/pool.ts'
import * as worker from './workers/worker.ts'

const HALF_A_MINUTE_MS = 30_000
/** A connection on which nothing moves is ended after this: longer than heavy work may wait and take. */
const SILENT_MS = 150_000

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
  /** Where the load of the worker threads is read for `/metrics`; no metrics without it. */
  poolLoad?: () => PoolLoad
  /** Requests a minute that one client may make; 0 for any number. */
  rateLimit?: number
  /** Addresses of proxies whose word on the client is taken; none when left out. */
  trustProxy?: readonly string[]
  /** Time in which a whole request has to arrive. */
  requestTimeoutMs?: number
  /** How long requests may wait for their turn before they are refused; never refused for that when left out. */
  mostLateMs?: number
  /** false while the service is about to end. */
  isReady?: () => boolean
}

const inThisThread: HeavyWork = {
  cutList: async (body) => worker.cutList(body),
  cutListPdf: (printing) => worker.cutListPdf(printing),
  designCheck: async (design) => worker.designCheck(design),
  buildSheetPdf: (order) => worker.buildSheetPdf(order),
  driverMeasurement: async (body) => worker.driverMeasurement(body),
  asBuilt: async (body) => worker.asBuilt(body),
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
  poolLoad,
  rateLimit = 0,
  trustProxy = [],
  requestTimeoutMs = HALF_A_MINUTE_MS,
  mostLateMs,
  isReady = () => true,
}: AppOptions = {}) {
  const log = logAt(logLevel)
  const loggerInstance: FastifyBaseLogger = log
  const app = Fastify({
    loggerInstance,
    logController: new LogController({ disableRequestLogging: true }),
    bodyLimit: BODY_LIMIT_BYTES,
    connectionTimeout: SILENT_MS,
    requestTimeout: requestTimeoutMs,
    http: {
      // A head that drips in has the same time as a whole request; Node looks only so often.
      headersTimeout: requestTimeoutMs,
      connectionsCheckingInterval: Math.ceil(requestTimeoutMs / 6),
      // Refused by ourselves, in words.
      requireHostHeader: false,
    },
    genReqId: requestId,
    trustProxy: trustProxy.length > 0 ? [...trustProxy] : false,
    // What still arrives on an open connection while the service ends is answered, and the connection then closed.
    return503OnClosing: false,
    frameworkErrors: answerError,
    clientErrorHandler: answerBrokenConnection,
  }).withTypeProvider<TypeBoxTypeProvider>()

  // Requests are read by `bodyReader`, which tells every fault; answers are typed, so plain JSON is enough.
  app.setValidatorCompiler(() => () => true)
  app.setSerializerCompiler(() => (answer) => JSON.stringify(answer))
  app.decorate('heavyWork', heavyWork)
  readJsonBodies(app)
  answerProblems(app)
  markAnswers(app, isReady)
  refuseTwoHosts(app)
  passExpectations(app)
  if (log.isLevelEnabled('info')) logRequests(app)
  if (mostLateMs !== undefined) refuseWhenLate(app, mostLateMs)
  if (rateLimit > 0) await limitRates(app, rateLimit)
  if (poolLoad !== undefined) countRequests(app, poolLoad)

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
  await app.register(health, { isReady })
  return app
}
