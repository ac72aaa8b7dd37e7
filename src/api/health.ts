import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'

export interface HealthOptions {
  /** false while the service is about to end and wants no more requests. */
  isReady: () => boolean
}

/** For whoever keeps the service running; not part of the contract, not logged, not kept by caches. */
export const health: FastifyPluginAsyncTypebox<HealthOptions> = async (app, { isReady }) => {
  const unseen = { schema: { hide: true }, logLevel: 'silent' } as const
  app.get('/health/live', unseen, (_request, reply) =>
    reply.header('cache-control', 'no-store').send({ status: 'ok' }),
  )
  app.get('/health/ready', unseen, (_request, reply) => {
    const ready = isReady()
    return reply
      .code(ready ? 200 : 503)
      .header('cache-control', 'no-store')
      .send({ status: ready ? 'ok' : 'ending' })
  })
}
