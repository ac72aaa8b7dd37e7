import type { IncomingMessage } from 'node:http'
import type { FastifyInstance } from 'fastify'

/** What a client or proxy may call its request: nothing that could break a log line or a header. */
const SANE = /^[\w.-]{1,100}$/

/** The name that the request brings in `x-request-id`, or a new one. */
export function requestId({ headers }: Pick<IncomingMessage, 'headers'>): string {
  const given = headers['x-request-id']
  return typeof given === 'string' && SANE.test(given) ? given : crypto.randomUUID()
}

/** Every answer brings the name of its request, and forbids browsers to guess at its media type. */
export function markAnswers(app: FastifyInstance): void {
  app.addHook('onRequest', (request, reply, next) => {
    reply.header('x-request-id', request.id).header('x-content-type-options', 'nosniff')
    next()
  })
}
