import type { FastifyInstance } from 'fastify'

/** Long enough for a balancer that looks every half second to see that the service is not ready any more. */
const NOTICE_MS = 500

export interface Shutdown {
  isDraining: () => boolean
  /** Resolves when all that was begun is answered, at the latest after so many seconds; true when nothing was cut. */
  drain: (app: FastifyInstance, mostSeconds: number) => Promise<boolean>
}

/** Ends the service so that nobody notices: not ready, then no new connections, then what was begun is finished. */
export function shutdown(noticeMs = NOTICE_MS): Shutdown {
  let draining = false
  return {
    isDraining: () => draining,
    drain: async (app, mostSeconds) => {
      draining = true
      await new Promise((done) => setTimeout(done, noticeMs))
      const late = new Promise<false>((done) => setTimeout(() => done(false), mostSeconds * 1000).unref())
      return Promise.race([app.close().then(() => true), late])
    },
  }
}
