// From the start of the process to its first answer, and where the time goes: plain Node, a bare Fastify, the service.
//   node scripts/bench/cold-start.mjs [rounds, 9] [folder of the built service, dist]
import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { resolve } from 'node:path'
import { serviceProcess } from './service-process.mjs'
import { median, spread } from './spread.mjs'

const [rounds = '9', folder = 'dist'] = process.argv.slice(2)
const BARE = new URL('bare-fastify.mjs', import.meta.url).pathname
const SERVICE = resolve(folder, 'main.js')

async function plainNode() {
  const from = performance.now()
  await once(spawn(process.execPath, ['-e', '0'], { stdio: 'ignore' }), 'exit')
  return performance.now() - from
}

/** Time to the first answer of a script; the address is known as soon as it listens. */
async function firstAnswer(script, path, body) {
  const from = performance.now()
  const service = await serviceProcess(script)
  const response = await fetch(`${service.address}${path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  })
  await response.text()
  const took = performance.now() - from
  await service.end()
  if (response.status !== 200) throw new Error(`the first answer of ${script} was ${response.status}`)
  return took
}

const PORT_BODY = { netVolumeL: 3, innerDiameterMm: 26, tuningHz: 105 }
const variants = {
  'node -e 0, to its end': plainNode,
  'bare Fastify, first answer': () => firstAnswer(BARE, '/echo', PORT_BODY),
  'service, first answer of /v1/port': () => firstAnswer(SERVICE, '/v1/port', PORT_BODY),
}
const taken = new Map(Object.keys(variants).map((name) => [name, []]))
// One round of every variant after the other, so that a busy minute of the machine meets all of them.
for (let round = 0; round < Number(rounds); round++)
  for (const [name, run] of Object.entries(variants)) taken.get(name).push(await run())

console.log(`Cold start, ${rounds} rounds, milliseconds: median [20th to 80th percentile], fastest`)
for (const [name, ms] of taken)
  console.log(`  ${name.padEnd(36)} ${spread(ms, 0)}  fastest ${Math.min(...ms).toFixed(0)}`)
const [node, , service] = [...taken.values()].map(median)
console.log(`  the service takes ${(service / node).toFixed(1)} times as long as Node alone`)
