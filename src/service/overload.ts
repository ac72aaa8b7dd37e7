import type { FastifyInstance } from 'fastify'
import { Refused } from '../api/problem.ts'
import { isForKeepers } from './keepers.ts'

/** How often the lateness of the event loop is looked at. */
const LOOK_MS = 100

/**
 * Refuses requests while the event loop runs late, before everybody waits: those that are taken are answered soon, the
 * others know when to come again. Twice in a row has to be late, so one long calculation alone refuses nobody.
 */
export function refuseWhenLate(app: FastifyInstance, mostLateMs: number): void {
  let lateInARow = 0
  let last = performance.now()
  const timer = setInterval(() => {
    const now = performance.now()
    lateInARow = now - last - LOOK_MS > mostLateMs ? lateInARow + 1 : 0
    last = now
  }, LOOK_MS)
  timer.unref()
  app.addHook('onClose', async () => clearInterval(timer))
  app.addHook('onRequest', async (request) => {
    if (lateInARow >= 2 && !isForKeepers(request.url))
      throw new Refused(
        'busy',
        'More requests arrive than this machine can answer. Try again in a few seconds.',
      )
  })
}
