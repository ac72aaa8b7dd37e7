import type { FastifyInstance } from 'fastify'
import { Refused } from '../api/problem.ts'
import { isForKeepers } from './keepers.ts'

/** So many requests are taken in any case, so that one long calculation refuses nobody who came beside it. */
const FEW = 4

/**
 * Refuses requests that have waited too long for their turn, before everybody waits: those that are taken are answered
 * soon, the others know when to come again. What arrived together is worked off in one turn of the event loop, so the
 * age of the turn is what its next request has waited. It is asked when the body is there: heads alone cost no time, and
 * all of them would be taken.
 */
export function refuseWhenLate(app: FastifyInstance, mostLateMs: number): void {
  let taken = 0
  let began = 0
  const end = () => {
    taken = 0
  }
  app.addHook('preHandler', (request, _reply, next) => {
    if (isForKeepers(request)) return next()
    if (taken === 0) {
      began = performance.now()
      setImmediate(end)
    }
    if (taken >= FEW && performance.now() - began > mostLateMs) return next(busy())
    taken += 1
    next()
  })
}

const busy = (): Refused =>
  new Refused('busy', 'More requests arrive than this machine can answer. Try again in a few seconds.')
