import type { FastifyBaseLogger, FastifyReply, FastifyRequest } from 'fastify'
import { type DestinationStream, pino } from 'pino'

/** The log: what was asked and how it went, never a body, a header or a value of a query. */
export function logAt(level: string, stream?: DestinationStream): FastifyBaseLogger {
  const options = {
    level,
    serializers: {
      req: ({ method, url }: FastifyRequest) => ({ method, path: url.split('?')[0] }),
      res: ({ statusCode }: FastifyReply) => ({ statusCode }),
    },
  }
  return stream === undefined ? pino(options) : pino(options, stream)
}
