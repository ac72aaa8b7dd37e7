// Memory of the built service under steady work: first 100,000 requests, then minutes of mixed ones, and how the
// resident memory goes, with the slope of a straight line through it.
//   node scripts/soak.mjs [minutes, 10] [folder of the built service, dist] [requests before, 100000]
import { readFile } from 'node:fs/promises'
import { resolve } from 'node:path'
import { Pool } from 'undici'
import { OPERATIONS, requestsOf } from './bench/requests.mjs'
import { imageOptions, serviceProcess } from './bench/service-process.mjs'

const [minutes = '10', folder = 'dist', before = '100000'] = process.argv.slice(2)
const CONNECTIONS = 8
const SAMPLE_MS = 10_000
/** One large answer among many small ones, as a house asks them. */
const WEIGHTS = {
  '/v1/port': 12,
  '/v1/load-impedance': 3,
  '/v1/power-budget': 3,
  '/v1/box-tuning': 1,
  '/v1/design-check': 1,
}

const service = await serviceProcess(resolve(folder, 'main.js'), {
  environment: { RATE_LIMIT: '0' },
  nodeOptions: await imageOptions(),
})

/** Resident memory in MB, as the system counts it. */
async function residentMb() {
  const status = await readFile(`/proc/${service.pid}/status`, 'utf8')
  return Number(/VmRSS:\s+(\d+) kB/.exec(status)?.[1]) / 1024
}

const pool = new Pool(service.address, { connections: CONNECTIONS, pipelining: 1 })
const startMb = await residentMb()
const requests = await requestsOf(service.address)
const turn = OPERATIONS.flatMap((path) => Array.from({ length: WEIGHTS[path] }, () => path))
let sent = 0
let failed = 0

async function one() {
  const number = sent++
  const path = turn[number % turn.length]
  const { bodies } = requests[path]
  const { statusCode, body } = await pool.request({
    path,
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: bodies[Math.floor(number / turn.length) % bodies.length],
  })
  await body.dump({ limit: 10_000_000 })
  if (statusCode !== 200) failed++
}

/** Asks over all connections as long as it should. */
async function askWhile(goesOn) {
  const client = async () => {
    while (goesOn()) await one()
  }
  await Promise.all(Array.from({ length: CONNECTIONS }, client))
}

/** Slope of the least-squares line, in MB a minute, as text. */
function slope(points) {
  if (points.length < 2) return 'unknown (too short a time)'
  const mean = (of) => points.reduce((sum, point) => sum + of(point), 0) / points.length
  const at = mean(({ minute }) => minute)
  const mb = mean((point) => point.mb)
  const over = points.reduce((sum, point) => sum + (point.minute - at) * (point.mb - mb), 0)
  return (over / points.reduce((sum, point) => sum + (point.minute - at) ** 2, 0)).toFixed(2)
}

console.log(`Node ${process.version}; after the start ${startMb.toFixed(0)} MB`)
await askWhile(() => sent < Number(before))
console.log(`after ${sent} requests ${(await residentMb()).toFixed(1)} MB, ${failed} failed`)

const from = performance.now()
const points = []
const minute = () => (performance.now() - from) / 60_000
const sampling = setInterval(async () => {
  points.push({ minute: minute(), mb: await residentMb() })
}, SAMPLE_MS)
const counted = sent
await askWhile(() => minute() < Number(minutes))
clearInterval(sampling)

for (let i = 0; i < Number(minutes); i++) {
  const own = points.filter((point) => Math.floor(point.minute) === i).map(({ mb }) => mb)
  if (own.length > 0)
    console.log(
      `  minute ${String(i + 1).padStart(2)}: ${Math.min(...own).toFixed(1)} to ${Math.max(...own).toFixed(1)} MB`,
    )
}
console.log(`${sent - counted} requests in ${minutes} minutes, ${failed} failed`)
console.log(
  `slope ${slope(points)} MB a minute over all, ${slope(points.filter((point) => point.minute > Number(minutes) / 2))} in the second half`,
)
await pool.close()
await service.end()
if (failed > 0) process.exitCode = 1
