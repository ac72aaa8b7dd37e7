// How much of an answer is the calculation itself, and which serialiser is the faster one; in this process, without a
// network, in alternating slices. Prints one JSON document for bench-http.
//   node scripts/bench/core-share.mjs <folder of the built service> <file of requests>
import { readFile } from 'node:fs/promises'
import { resolve } from 'node:path'
import { pathToFileURL } from 'node:url'
import Fastify from 'fastify'

const [folder, file, slices = '9', sliceMs = '250'] = process.argv.slice(2)
const built = pathToFileURL(`${resolve(folder)}/`)
const load = (path) => import(new URL(path, built).href)

const CORES = {
  '/v1/port': (await load('core/box/port.js')).port,
  '/v1/load-impedance': (await load('core/design/load-in-box.js')).loadInBox,
  '/v1/power-budget': (await load('core/power/power-budget.js')).powerBudget,
  '/v1/box-tuning': (await load('core/box/box-tuning.js')).boxTuning,
  '/v1/design-check': (await load('core/design/design-check.js')).designCheck,
}

const app = await (await load('app.js')).buildApp()
await app.ready()
const contract = (await app.inject('/openapi.json')).json()

/** Microseconds a call over one slice. */
async function callUs(call) {
  const from = performance.now()
  let calls = 0
  while (performance.now() - from < Number(sliceMs)) await call(calls++)
  return ((performance.now() - from) * 1000) / calls
}

/** Slices of several calls in turn, after one that only warms up. */
async function inTurn(calls) {
  for (const call of Object.values(calls)) await callUs(call)
  const taken = Object.fromEntries(Object.keys(calls).map((name) => [name, []]))
  for (let slice = 0; slice < Number(slices); slice++)
    for (const [name, call] of Object.entries(calls)) taken[name].push(await callUs(call))
  return taken
}

/** The serialiser that Fastify compiles of a schema of the contract, once its pointers lead into the schema itself. */
async function compiledFor(path) {
  const { schema } = contract.paths[path].post.responses['200'].content['application/json']
  const local = JSON.parse(
    JSON.stringify({ ...schema, $defs: contract.components.schemas }).replaceAll(
      '#/components/schemas/',
      '#/$defs/',
    ),
  )
  const server = Fastify()
  let serialise
  server.get('/', (_request, reply) => {
    serialise = reply.compileSerializationSchema(local)
    return reply.send('')
  })
  await server.inject('/')
  return serialise
}

const requests = JSON.parse(await readFile(file, 'utf8'))
const found = {}
for (const [path, { bodies, answer }] of Object.entries(requests)) {
  const body = (i) => bodies[i % bodies.length]
  const aside = { heavyWork: app.heavyWork, gone: () => new AbortController().signal }
  const compiled = await compiledFor(path)
  found[path] = await inTurn({
    inject: (i) =>
      app.inject({
        method: 'POST',
        url: path,
        headers: { 'content-type': 'application/json' },
        payload: body(i),
      }),
    core: (i) => CORES[path](JSON.parse(body(i)), aside),
    stringify: () => JSON.stringify(answer),
    compiled: () => compiled(answer),
  })
}
console.log(JSON.stringify(found))
