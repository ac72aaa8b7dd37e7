import { fileURLToPath } from 'node:url'
import { buildApp } from './app.ts'
import { mathEngine } from './core/math-engine.ts'
import { shutdown } from './service/shutdown.ts'
import { settingsFrom } from './settings.ts'
import { workerPool } from './workers/pool.ts'

const SOON_MS = 1000
const MOST_LATE_MS = 500

function stop(message: string): never {
  process.stderr.write(`${message}\n`)
  process.exit(1)
}

const settings = settingsFrom(process.env)
if ('faults' in settings) stop(settings.faults.join('\n'))

const { host, port, metrics, shutdownSeconds, ...service } = settings
const pool = workerPool({ workerUrl: new URL('./workers/worker.js', import.meta.url) })
const kioskFolder = fileURLToPath(new URL('./page', import.meta.url))
const { isDraining, drain } = shutdown()
const app = await buildApp({
  ...service,
  heavyWork: pool.heavyWork,
  kioskFolder,
  mostLateMs: MOST_LATE_MS,
  isReady: () => !isDraining(),
  ...(metrics ? { poolLoad: pool.load } : {}),
})
app.addHook('onClose', pool.close)

for (const signal of ['SIGINT', 'SIGTERM'] as const) {
  process.once(signal, () => {
    drain(app, shutdownSeconds, pool.giveUp).then((isDone) => process.exit(isDone ? 0 : 1))
  })
}

/** Where the service can be reached. */
export const address = await app
  .listen({ host, port })
  .catch((error: Error) => stop(`Cannot listen on ${host}, port ${port}: ${error.message}`))
process.stdout.write(`Boxwright listens on ${address}, documentation at ${address}/docs\n`)

// Loaded when the first answers are out, so that neither they nor the first text with a unit wait for it.
setTimeout(mathEngine, SOON_MS).unref()
