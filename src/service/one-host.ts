import type { FastifyInstance } from 'fastify'
import { notReadable } from '../api/problem.ts'

/**
 * Refuses a request that names two hosts: a proxy could have looked at the one, and what checks the host here at the
 * other; and one of HTTP/1.1 that names none (RFC 9112, section 3.2).
 */
export function refuseTwoHosts(app: FastifyInstance): void {
  app.addHook('onRequest', (request, _reply, next) => {
    const hosts = hostsIn(request.raw.rawHeaders)
    if (hosts > 1) next(notReadable('The Host header comes more than once.'))
    else if (hosts === 0 && request.raw.httpVersion === '1.1')
      next(notReadable('The Host header is missing.'))
    else next()
  })
}

/** Names and values stand there in turn, as they were sent. */
function hostsIn(rawHeaders: readonly string[]): number {
  let hosts = 0
  for (let i = 0; i < rawHeaders.length; i += 2) {
    const name = rawHeaders[i] ?? ''
    if (name.length === 4 && name.toLowerCase() === 'host') hosts += 1
  }
  return hosts
}
