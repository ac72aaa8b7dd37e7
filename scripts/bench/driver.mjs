// A process of its own that sends requests over a number of kept connections for a time, and tells what came back.
import { Pool } from 'undici'

const pools = new Map()

function poolOf(origin, connections) {
  const known = pools.get(origin)
  if (known !== undefined) return known
  const pool = new Pool(origin, { connections, pipelining: 1 })
  pools.set(origin, pool)
  return pool
}

/** One slice: as many requests as go in the time, the bodies in turn; latencies in milliseconds. */
async function slice({ origin, path, bodies, ms, connections }) {
  const pool = poolOf(origin, connections)
  const from = performance.now()
  const until = from + ms
  const latencies = []
  let next = 0
  let failed = 0
  const one = async () => {
    while (performance.now() < until) {
      const sent = performance.now()
      const { statusCode, body } = await pool.request({
        path,
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: bodies[next++ % bodies.length],
      })
      await body.dump({ limit: 10_000_000 })
      if (statusCode !== 200) failed++
      latencies.push(performance.now() - sent)
    }
  }
  // It never sleeps: waking it would be charged to the server that answers, and most to the one that answers slowly.
  let isOn = true
  const awake = () => {
    if (isOn) setImmediate(awake)
  }
  awake()
  await Promise.all(Array.from({ length: connections }, one))
  isOn = false
  return { requests: latencies.length, seconds: (performance.now() - from) / 1000, latencies, failed }
}

process.on('message', async ({ id, task }) => {
  try {
    process.send({ id, done: await slice(task) })
  } catch (error) {
    process.send({ id, error: String(error) })
  }
})
