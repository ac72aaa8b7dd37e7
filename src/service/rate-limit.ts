import type { FastifyInstance } from 'fastify'
import { Refused } from '../api/problem.ts'
import { isForKeepers } from './keepers.ts'

const A_MINUTE_MS = 60_000

/** At most so many requests a minute and client address; a spreadsheet cell makes two to four of them. */
export async function limitRates(app: FastifyInstance, requestsAMinute: number): Promise<void> {
  // Most installations do not limit, and need not load it at their start.
  const { default: rateLimit } = await import('@fastify/rate-limit')
  await app.register(rateLimit, {
    max: requestsAMinute,
    timeWindow: A_MINUTE_MS,
    allowList: isForKeepers,
    errorResponseBuilder: (_request, { max, after }) =>
      new Refused('too-many', `A client may ask ${max} times a minute. Ask again in ${after}.`),
  })
  // What is under no path of ours is asked too; the limit itself is set at each route.
  const limit = app.rateLimit()
  app.addHook('onRequest', async function (request, reply) {
    if (request.is404) await limit.call(this, request, reply)
  })
}
