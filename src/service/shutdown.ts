import { setTimeout as delay } from 'node:timers/promises'
import type { FastifyInstance } from 'fastify'

/** Long enough for a balancer that looks every half second, and takes some time to do so. */
const NOTICE_MS = 1000
const SLICES = 10
/** How often connections are looked for on which nothing happens any more. */
const LOOK_MS = 100

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
      closeAfterAnswers(app)
      // In slices: of a time in which the process does one long thing, nobody was told anything.
      for (let slice = 0; slice < SLICES; slice += 1) await delay(noticeMs / SLICES)
      const late = new Promise<false>((done) => setTimeout(() => done(false), mostSeconds * 1000).unref())
      // Node closes the idle connections once; one that was answering then would stay open until its client leaves.
      const sweep = setInterval(() => app.server.closeIdleConnections(), LOOK_MS)
      return Promise.race([app.close().then(() => true), late]).finally(() => clearInterval(sweep))
    },
  }
}

/** Every request from now on is told that its connection ends with the answer, so that its client goes elsewhere. */
function closeAfterAnswers(app: FastifyInstance): void {
  app.server.prependListener('request', (_request, response) => {
    response.shouldKeepAlive = false
  })
}
