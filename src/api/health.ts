import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'

/** For whoever keeps the service running; not part of the contract, not logged, not kept by caches. */
export const health: FastifyPluginAsyncTypebox = async (app) => {
  for (const path of ['/health/live', '/health/ready']) {
    app.get(path, { schema: { hide: true }, logLevel: 'silent' }, (_request, reply) =>
      reply.header('cache-control', 'no-store').send({ status: 'ok' }),
    )
  }
}
