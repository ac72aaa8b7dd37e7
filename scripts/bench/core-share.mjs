// What the calculation itself takes, and which serialiser is the faster one; in this process, without a network, in
// alternating slices. Prints one JSON document for bench-http.
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
function callUs(call) {
  const from = performance.now()
  let calls = 0
  while (performance.now() - from < Number(sliceMs)) call(calls++)
  return ((performance.now() - from) * 1000) / calls
}

/** Other numbers of the same length: the engine remembers the text of numbers that it wrote lately. */
const renewed = (answer) =>
  JSON.parse(JSON.stringify(answer), (_, value) =>
    typeof value === 'number' && !Number.isInteger(value) ? value * (1 + Math.random() / 1000) : value,
  )

/** Microseconds an answer over one slice, each with numbers that were never written before; making them is not timed. */
function serialiseUs(serialise, answer) {
  let spent = 0
  let calls = 0
  while (spent < Number(sliceMs) / 4) {
    const fresh = Array.from({ length: 20 }, () => renewed(answer))
    const from = performance.now()
    for (const one of fresh) Buffer.byteLength(serialise(one))
    spent += performance.now() - from
    calls += fresh.length
  }
  return (spent * 1000) / calls
}

/** Slices of several measurements in turn, after one that only warms up. */
function inTurn(measurements) {
  for (const measure of Object.values(measurements)) measure()
  const taken = Object.fromEntries(Object.keys(measurements).map((name) => [name, []]))
  for (let slice = 0; slice < Number(slices); slice++)
    for (const [name, measure] of Object.entries(measurements)) taken[name].push(measure())
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
for (const [path, { bodies, answers }] of Object.entries(requests)) {
  const [answer] = answers
  const body = (i) => bodies[i % bodies.length]
  const aside = { heavyWork: app.heavyWork, gone: () => new AbortController().signal }
  const compiled = await compiledFor(path)
  found[path] = inTurn({
    core: () => callUs((i) => CORES[path](JSON.parse(body(i)), aside)),
    stringify: () => serialiseUs(JSON.stringify, answer),
    compiled: () => serialiseUs(compiled, answer),
  })
}
console.log(JSON.stringify(found))
