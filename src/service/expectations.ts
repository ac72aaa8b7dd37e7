import type { FastifyInstance } from 'fastify'

/**
 * What a client expects besides that it may go on is passed over, as RFC 9110, section 10.1.1, allows; Node by itself
 * would refuse it without a word.
 */
export function passExpectations({ server }: FastifyInstance): void {
  server.on('checkExpectation', (request, response) => server.emit('request', request, response))
}
