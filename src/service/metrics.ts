import type { FastifyInstance } from 'fastify'
import { collectDefaultMetrics, Gauge, Histogram, Registry } from 'prom-client'
import type { PoolLoad } from '../workers/pool.ts'

/** From well below a cached answer up to the longest heavy work. */
const SECONDS = [0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10, 30, 60]

/**
 * Counts and times every request, and shows it at `/metrics` in the text format of Prometheus. Requests are told apart
 * by the pattern of their route, never by their address, so that no client can make the table grow.
 */
export function countRequests(app: FastifyInstance, load: () => PoolLoad): void {
  const register = new Registry()
  collectDefaultMetrics({ register })
  const duration = new Histogram({
    name: 'http_request_duration_seconds',
    help: 'Time from the head of a request to the end of its answer',
    labelNames: ['method', 'route', 'status'],
    buckets: SECONDS,
    registers: [register],
  })
  const gauge = (name: string, help: string, value: () => number) =>
    new Gauge({
      name,
      help,
      registers: [register],
      collect() {
        this.set(value())
      },
    })
  gauge('heavy_work_running', 'Pieces of heavy work in the worker threads', () => load().running)
  gauge('heavy_work_waiting', 'Pieces of heavy work waiting for a thread', () => load().waiting)

  app.addHook('onResponse', async (request, reply) => {
    const route = request.routeOptions.url ?? 'none'
    // Of a client that went away before its answer no status was ever seen.
    const isGone = reply.raw.destroyed && !reply.raw.writableFinished
    const status = isGone ? 'gone' : `${Math.floor(reply.statusCode / 100)}xx`
    duration.observe({ method: request.method, route, status }, reply.elapsedTime / 1000)
  })
  app.get('/metrics', { schema: { hide: true }, logLevel: 'silent' }, async (_request, reply) =>
    reply
      .header('cache-control', 'no-store')
      .type(register.contentType)
      .send(await register.metrics()),
  )
}
