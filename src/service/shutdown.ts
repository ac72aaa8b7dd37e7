import { setTimeout as delay } from 'node:timers/promises'
import type { FastifyInstance } from 'fastify'

/** Long enough for a balancer that looks every half second, and takes some time to do so. */
const NOTICE_MS = 1000
const SLICES = 10
/** How often connections are looked for on which nothing happens any more. */
const LOOK_MS = 100
/** Time for the answers that say what is given up. */
const LAST_ANSWERS_MS = 2000

export interface Shutdown {
  isDraining: () => boolean
  /**
   * Resolves when all that was begun is answered; true when nothing was cut. After so many seconds heavy work is given
   * up by `giveUp`, which refuses it and says how much that was, and what is not answered soon after that is cut.
   */
  drain: (app: FastifyInstance, mostSeconds: number, giveUp?: () => number) => Promise<boolean>
}

/** Ends the service so that nobody notices: not ready, then no new connections, then what was begun is finished. */
export function shutdown(noticeMs = NOTICE_MS): Shutdown {
  let draining = false
  return {
    isDraining: () => draining,
    drain: async (app, mostSeconds, giveUp = () => 0) => {
      draining = true
      closeAfterAnswers(app)
      // In slices: of a time in which the process does one long thing, nobody was told anything.
      for (let slice = 0; slice < SLICES; slice += 1) await delay(noticeMs / SLICES)
      // Node closes the idle connections once; one that was answering then would stay open until its client leaves.
      const sweep = setInterval(() => app.server.closeIdleConnections(), LOOK_MS)
      const closed = app.close().then(() => true)
      const inTime = await within(mostSeconds * 1000, closed)
      if (!inTime) {
        app.log.warn({ pieces: giveUp() }, 'the service ends: work that is not finished is refused')
      }
      const isDone = inTime || (await within(LAST_ANSWERS_MS, closed))
      if (!isDone) app.log.warn('the service ends: what is not answered is cut')
      clearInterval(sweep)
      return isDone
    },
  }
}

/** Whether it happens within so long. */
function within(mostMs: number, done: Promise<boolean>): Promise<boolean> {
  const late = new Promise<false>((resolve) => setTimeout(() => resolve(false), mostMs).unref())
  return Promise.race([done, late])
}

/** Every request from now on is told that its connection ends with the answer, so that its client goes elsewhere. */
function closeAfterAnswers(app: FastifyInstance): void {
  app.server.prependListener('request', (_request, response) => {
    response.shouldKeepAlive = false
  })
}
