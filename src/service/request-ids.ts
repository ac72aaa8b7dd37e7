import type { IncomingMessage } from 'node:http'
import type { FastifyInstance } from 'fastify'

/** What a client or proxy may call its request: nothing that could break a log line or a header. */
const SANE = /^[\w.-]{1,100}$/

/** The name that the request brings in `x-request-id`, or a new one. */
export function requestId({ headers }: Pick<IncomingMessage, 'headers'>): string {
  const given = headers['x-request-id']
  return typeof given === 'string' && SANE.test(given) ? given : crypto.randomUUID()
}

/**
 * Every answer brings the name of its request, and forbids browsers to guess at its media type. While the service is
 * about to end it also says that its connection ends with it, so that the client goes elsewhere.
 */
export function markAnswers(app: FastifyInstance, isReady: () => boolean): void {
  app.addHook('onSend', (request, reply, payload, next) => {
    reply.header('x-request-id', request.id).header('x-content-type-options', 'nosniff')
    if (!isReady()) reply.header('connection', 'close')
    next(null, payload)
  })
}
