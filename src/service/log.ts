import type { FastifyInstance } from 'fastify'
import { type DestinationStream, type Logger, pino } from 'pino'
import { isForKeepers } from './keepers.ts'

export function logAt(level: string, stream?: DestinationStream): Logger {
  return stream === undefined ? pino({ level }) : pino({ level }, stream)
}

/** One line a request: what was asked and how it went, never a body, a header, or more of the address than its route. */
export function logRequests(app: FastifyInstance): void {
  app.addHook('onResponse', (request, reply, next) => {
    if (isForKeepers(request)) return next()
    const { method, routeOptions } = request
    const ms = Math.round(reply.elapsedTime * 10) / 10
    request.log.info({ method, route: routeOptions.url ?? 'none', status: reply.statusCode, ms }, 'answered')
    next()
  })
}
