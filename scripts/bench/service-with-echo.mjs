// The service as `main.js` builds it, with one more route for each calculation: it reads the body as all routes do, and
// sends answers that it was given beforehand, each in turn. What such a route takes is the price of the server around
// the work.
//   node scripts/bench/service-with-echo.mjs <folder of the built service> <file of lists of answers by path>
import { readFile } from 'node:fs/promises'
import { resolve } from 'node:path'
import { pathToFileURL } from 'node:url'

const [folder, file] = process.argv.slice(2)
const built = pathToFileURL(`${resolve(folder)}/`)
const { buildApp } = await import(new URL('app.js', built).href)
const { settingsFrom } = await import(new URL('settings.js', built).href)

const { workerPool } = await import(new URL('workers/pool.js', built).href)

const settings = settingsFrom(process.env)
if ('faults' in settings) throw new Error(settings.faults.join('\n'))
const pool = workerPool({ workerUrl: new URL('workers/worker.js', built) })
const app = await buildApp({
  ...settings,
  kioskFolder: resolve(folder, 'page'),
  heavyWork: pool.heavyWork,
  mostLateMs: 500,
  ...(settings.metrics ? { poolLoad: pool.load } : {}),
})
const answers = JSON.parse(await readFile(file, 'utf8'))
for (const [path, list] of Object.entries(answers)) {
  let count = 0
  app.post(`/echo${path}`, { schema: { hide: true } }, (_request, reply) =>
    reply.type('application/json; charset=utf-8').send(list[count++ % list.length]),
  )
}
console.log(await app.listen({ host: settings.host, port: settings.port }))
process.once('SIGTERM', () => process.exit(0))
