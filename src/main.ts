import { pino } from 'pino'
import { buildApp } from './app.ts'
import { mathEngine } from './core/math-engine.ts'
import { workerPool } from './workers/pool.ts'

const HIGHEST_PORT = 65_535
const LOG_LEVELS = [...Object.keys(pino.levels.values), 'silent']

function stop(message: string): never {
  process.stderr.write(`${message}\n`)
  process.exit(1)
}

/** The port from the environment; 0 lets the system choose one. */
function portFrom(text: string): number {
  if (/^\d+$/.test(text) && Number(text) <= HIGHEST_PORT) return Number(text)
  return stop(`PORT must be a whole number from 0 to ${HIGHEST_PORT}, is "${text}"`)
}

function logLevelFrom(text: string): string {
  if (LOG_LEVELS.includes(text)) return text
  return stop(`LOG_LEVEL must be one of ${LOG_LEVELS.join(', ')}, is "${text}"`)
}

const { HOST: host = '127.0.0.1', PORT = '8080', LOG_LEVEL = 'warn' } = process.env
const port = portFrom(PORT)
const pool = workerPool({ workerUrl: new URL('./workers/worker.js', import.meta.url) })
const app = await buildApp({ logLevel: logLevelFrom(LOG_LEVEL), heavyWork: pool.heavyWork })
app.addHook('onClose', pool.close)

for (const signal of ['SIGINT', 'SIGTERM'] as const) {
  process.once(signal, () => {
    app.close().then(() => process.exit(0))
  })
}

/** Where the service can be reached. */
export const address = await app
  .listen({ host, port })
  .catch((error: Error) => stop(`Cannot listen on ${host}, port ${PORT}: ${error.message}`))
process.stdout.write(`Boxwright listens on ${address}, documentation at ${address}/docs\n`)

// Loaded now, so that the first text with a unit does not wait for it.
await mathEngine()
