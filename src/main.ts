import { buildApp } from './app.ts'
import { mathEngine } from './core/math-engine.ts'

const PORT_RANGE = { lowest: 0, highest: 65_535 }

/** The port from the environment; 0 lets the system choose one. */
function portFrom(text: string): number {
  const port = Number(text)
  const fits = /^\d+$/.test(text) && port >= PORT_RANGE.lowest && port <= PORT_RANGE.highest
  if (fits) return port
  process.stderr.write(`PORT must be a whole number from 0 to ${PORT_RANGE.highest}, is "${text}"\n`)
  process.exit(1)
}

const { HOST = '127.0.0.1', PORT = '8080', LOG_LEVEL = 'warn' } = process.env
const port = portFrom(PORT)
const app = await buildApp({ logger: { level: LOG_LEVEL } })

for (const signal of ['SIGINT', 'SIGTERM'] as const) {
  process.once(signal, () => {
    app.close().then(() => process.exit(0))
  })
}

const address = await app.listen({ host: HOST, port }).catch((error: Error) => {
  process.stderr.write(`Cannot listen on ${HOST}:${PORT}: ${error.message}\n`)
  process.exit(1)
})
process.stdout.write(`Boxwright listens on ${address} (documentation at ${address}/docs)\n`)

// Loaded now, so that the first text with a unit does not wait for it.
await mathEngine()
