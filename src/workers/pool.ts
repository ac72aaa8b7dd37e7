import { availableParallelism } from 'node:os'
import { Piscina } from 'piscina'
import type { HeavyWork } from '../api/heavy-work.ts'
import { Refused } from '../api/problem.ts'

/** Longest that one piece of work may take; what asks for the longest effort needs about half of it. */
const LONGEST_MS = 60_000
/** Pieces of work that may wait for each thread; one more is refused at once, so that nobody waits for nothing. */
const MOST_WAITING_EACH = 4
/** An unused thread ends after this, and gives its memory back. */
const IDLE_MS = 30_000

export interface WorkerPool {
  heavyWork: HeavyWork
  close: () => Promise<void>
}

export interface PoolOptions {
  /** The built worker. */
  workerUrl: URL
  threads?: number
  longestMs?: number
}

/** Worker threads for heavy work: one core is left to the requests. A thread whose work is given up is ended. */
export function workerPool({
  workerUrl,
  threads = Math.max(1, availableParallelism() - 1),
  longestMs = LONGEST_MS,
}: PoolOptions): WorkerPool {
  const pool = new Piscina({
    filename: workerUrl.href,
    minThreads: 0,
    maxThreads: threads,
    idleTimeout: IDLE_MS,
  })
  let inHand = 0
  const beside =
    <Body, Result>(name: keyof HeavyWork) =>
    async (body: Body, gone: AbortSignal): Promise<Result> => {
      if (inHand >= threads * (1 + MOST_WAITING_EACH)) throw busy('Too much work is waiting already.')
      const late = AbortSignal.timeout(longestMs)
      const done: Promise<Result> = pool.run(body, { name, signal: AbortSignal.any([gone, late]) })
      inHand++
      return done
        .catch((error: unknown) => {
          if (late.aborted && !gone.aborted) throw busy('The work took longer than this machine may give it.')
          throw error
        })
        .finally(() => inHand--)
    }
  return {
    heavyWork: {
      cutList: beside('cutList'),
      cutListPdf: beside('cutListPdf'),
      buildSheetPdf: beside('buildSheetPdf'),
    },
    close: () => pool.destroy(),
  }
}

const busy = (cause: string): Refused =>
  new Refused('busy', `${cause} Try again in a few seconds, or ask for less effort.`)
