// Speed of the built service over loopback, as ratios to what a server without the work can do, all in one run:
// alternating slices of the service, of an echo route in the same server and of two bare echoes, with the bodies and the
// answers of the same size, as many different ones as the service gives. The two bare ones against each other say how small a difference can be seen here.
//   node scripts/bench-http.mjs [slices, 9] [milliseconds a slice, 400] [folder of the built service, dist] [paths, parted by commas]
import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { rmSync } from 'node:fs'
import { mkdtemp, writeFile } from 'node:fs/promises'
import { availableParallelism, tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { driver, pinned } from './bench/drive.mjs'
import { processorMs } from './bench/processor-time.mjs'
import { OPERATIONS, requestsOf } from './bench/requests.mjs'
import { serviceProcess } from './bench/service-process.mjs'
import { median, percentile, spread } from './bench/spread.mjs'

const CONNECTIONS = 16
const [slices = '9', sliceMs = '400', folder = 'dist', only] = process.argv.slice(2)
const paths = only === undefined ? OPERATIONS : only.split(',')
const script = (name) => new URL(`bench/${name}`, import.meta.url).pathname
/** A bench is one client: what a client may ask in a minute is set aside. */
const environment = { RATE_LIMIT: '0' }

const work = await mkdtemp(join(tmpdir(), 'bench-http-'))
process.once('exit', () => rmSync(work, { recursive: true, force: true }))
const answersFile = join(work, 'answers.json')
const requestsFile = join(work, 'requests.json')

const service = await serviceProcess(resolve(folder, 'main.js'), { environment })
const requests = await requestsOf(service.address)
const answers = Object.fromEntries(paths.map((path) => [path, requests[path].answers]))
await writeFile(answersFile, JSON.stringify(answers))
await writeFile(requestsFile, JSON.stringify(Object.fromEntries(paths.map((path) => [path, requests[path]]))))

const withEcho = await serviceProcess(script('service-with-echo.mjs'), {
  environment,
  args: [folder, answersFile],
})
const bare = await serviceProcess(script('bare-fastify.mjs'), { args: [answersFile] })
const bareToo = await serviceProcess(script('bare-fastify.mjs'), { args: [answersFile] })
const driving = driver()

/** Each variant of an operation: the process that is asked, and the path. */
const variantsOf = (path) => ({
  service: { server: service, path },
  work: { server: withEcho, path },
  echo: { server: withEcho, path: `/echo${path}` },
  bare: { server: bare, path },
  'bare too': { server: bareToo, path },
})

async function measured({ server, path }, bodies, ms) {
  const before = await processorMs(server.pid)
  const done = await driving.slice({ origin: server.address, path, bodies, ms, connections: CONNECTIONS })
  const after = await processorMs(server.pid)
  if (done.failed > 0)
    throw new Error(`${path}: ${done.failed} of ${done.requests} were not answered with 200`)
  return {
    rate: done.requests / done.seconds,
    costMs: before === undefined || after === undefined ? undefined : (after - before) / done.requests,
    latencies: done.latencies,
  }
}

/** Slices of all variants in turn, every other round backwards, after one round that only warms up. */
async function sliced(path) {
  const variants = Object.entries(variantsOf(path))
  const { bodies } = requests[path]
  const taken = Object.fromEntries(variants.map(([name]) => [name, []]))
  for (const [, variant] of variants) await measured(variant, bodies, Number(sliceMs))
  for (let slice = 0; slice < Number(slices); slice++)
    for (const [name, variant] of slice % 2 === 0 ? variants : variants.toReversed())
      taken[name].push(await measured(variant, bodies, Number(sliceMs)))
  return taken
}

const ratios = (over, under, of) => over.map((one, i) => of(one) / of(under[i]))
const rate = ({ rate }) => rate
const cost = ({ costMs }) => costMs

function tell(path, taken) {
  const { service: own, work: same, echo, bare: one, 'bare too': other } = taken
  const text = JSON.stringify(answers[path][0])
  console.log(`\n${path}: ${requests[path].bodies[0].length} bytes in, ${text.length} bytes out`)
  for (const [name, slices] of Object.entries(taken)) {
    const all = slices.flatMap(({ latencies }) => latencies)
    const ms = (share) => percentile(all, share).toFixed(1)
    console.log(
      `  ${name.padEnd(9)} ${median(slices.map(rate)).toFixed(0).padStart(6)} requests/s, p50 ${ms(0.5)} ms, p99 ${ms(0.99)} ms` +
        (cost(slices[0]) === undefined
          ? ''
          : `, ${(1000 * median(slices.map(cost))).toFixed(0)} us of processor each`),
    )
  }
  const row = (name, over, under) => {
    const byCost =
      cost(over[0]) === undefined ? '' : `, by processor time ${spread(ratios(under, over, cost))}`
    console.log(`  ${name.padEnd(36)} ${spread(ratios(over, under, rate))}${byCost}`)
  }
  row('service / bare echo', own, one)
  row('work / echo route in the same server', same, echo)
  row('bare / bare, the resolution', other, one)
}

/** Milliseconds a request: of processor time where the machine tells it, else from one answer to the next. */
const costOf = (slices) => median(slices.map((slice) => cost(slice) ?? 1000 / rate(slice)))

async function coreShare(all) {
  const child = spawn(process.execPath, [script('core-share.mjs'), folder, requestsFile, slices], {
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  let text = ''
  child.stdout.on('data', (part) => {
    text += part
  })
  const [code] = await once(child, 'close')
  if (code !== 0) throw new Error(`core-share.mjs ended with ${code}`)
  console.log(
    '\nThe calculation by itself, as a share of all that an answer costs; at most as much as the echo does not cost',
  )
  const found = Object.entries(JSON.parse(text))
  for (const [path, { core }] of found) {
    const [coreUs, workUs, echoUs] = [
      median(core),
      1000 * costOf(all[path].work),
      1000 * costOf(all[path].echo),
    ]
    const most = (echoUs / (echoUs + coreUs)).toFixed(2)
    console.log(
      `  ${path.padEnd(19)} ${coreUs.toFixed(0)} of ${workUs.toFixed(0)} us: ${(coreUs / workUs).toFixed(2)} to ${(1 - echoUs / workUs).toFixed(2)}; with this calculation and no other cost the pace were ${most} of the echo's`,
    )
  }
  console.log('\nThe two serialisers, on numbers that were never written before')
  for (const [path, { stringify, compiled }] of found) {
    const us = (values) => `${median(values).toFixed(0)} us`
    const ratio = compiled.map((value, i) => value / stringify[i])
    console.log(
      `  ${path.padEnd(19)} JSON.stringify ${us(stringify)}, compiled ${us(compiled)}, compiled / stringify ${spread(ratio)}`,
    )
  }
}

try {
  if (availableParallelism() > 1) {
    const servers = [service, withEcho, bare, bareToo].every(({ pid }) => pinned(pid, 0))
    const alone = servers && pinned(driving.pid, 1)
    console.log(alone ? 'Servers on core 0, driver on core 1' : 'Servers and driver are not kept to cores')
  }
  console.log(
    `${slices} slices of ${sliceMs} ms each, ${CONNECTIONS} connections, Node ${process.version}; median [20th to 80th percentile]`,
  )
  const all = {}
  for (const path of paths) {
    all[path] = await sliced(path)
    tell(path, all[path])
  }
  await coreShare(all)
} finally {
  driving.end()
  for (const one of [service, withEcho, bare, bareToo]) await one.end('SIGKILL')
}
