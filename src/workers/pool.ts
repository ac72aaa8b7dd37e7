import { availableParallelism } from 'node:os'
import { Piscina } from 'piscina'
import type { HeavyWork, Waiting } from '../api/heavy-work.ts'
import { Refused } from '../api/problem.ts'
import { fairQueue } from './fair-queue.ts'

/** Longest that one piece of work may take; what asks for the longest effort needs about half of it. */
export const LONGEST_MS = 60_000
/** Pieces of work of one client that may wait for each thread, and of all clients together; one more is refused at once. */
const MOST_WAITING_OF_ONE = 4
const MOST_WAITING_OF_ALL = 16
/** Longest that a piece of work waits for its thread; together with the work itself less than a silent connection lasts. */
export const LONGEST_WAIT_MS = 60_000
/** An unused thread ends after this, and gives its memory back. */
const IDLE_MS = 30_000

export interface WorkerPool {
  heavyWork: HeavyWork
  load: () => PoolLoad
  /** Refuses all work, also what is begun or waits, because the service ends; says how many pieces that were. */
  giveUp: () => number
  close: () => Promise<void>
}

/** Pieces of work in the threads, and waiting for one. */
export interface PoolLoad {
  running: number
  waiting: number
}

export interface PoolOptions {
  /** The built worker. */
  workerUrl: URL
  threads?: number
  longestMs?: number
  longestWaitMs?: number
}

/**
 * Worker threads for heavy work: one core is left to the requests. A thread whose work is given up is ended.
 * Clients are served in turn, so that ten long searches of one do not keep the short one of another waiting.
 */
export function workerPool({
  workerUrl,
  threads = Math.max(1, availableParallelism() - 1),
  longestMs = LONGEST_MS,
  longestWaitMs = LONGEST_WAIT_MS,
}: PoolOptions): WorkerPool {
  const pool = new Piscina({
    filename: workerUrl.href,
    minThreads: 0,
    maxThreads: threads,
    idleTimeout: IDLE_MS,
  })
  const queue = fairQueue<() => void>()
  const underWay = new Set<AbortController>()
  let running = 0
  let isEnding = false

  /** Takes a thread, when it is this client's turn; rejects when that takes too long or the client goes away before. */
  async function turn({ gone, client }: Waiting): Promise<void> {
    gone.throwIfAborted()
    if (running < threads) {
      running += 1
      return
    }
    if (
      queue.waiting(client) >= threads * MOST_WAITING_OF_ONE ||
      queue.waiting() >= threads * MOST_WAITING_OF_ALL
    )
      throw busy('Too much work is waiting already.')
    const late = AbortSignal.timeout(longestWaitMs)
    const over = AbortSignal.any([gone, late])
    await new Promise<void>((resolve, reject) => {
      const start = () => {
        over.removeEventListener('abort', leave)
        running += 1
        resolve()
      }
      const leave = () => {
        queue.drop(client, start)
        reject(gone.aborted ? gone.reason : busy('Other work has kept this waiting for too long.'))
      }
      over.addEventListener('abort', leave, { once: true })
      queue.add(client, start)
    })
  }

  async function run<Body, Result>(name: keyof HeavyWork, body: Body, gone: AbortSignal): Promise<Result> {
    const late = AbortSignal.timeout(longestMs)
    try {
      return await pool.run(body, { name, signal: AbortSignal.any([gone, late]) })
    } catch (error) {
      if (late.aborted && !gone.aborted) throw busy('The work took longer than this machine may give it.')
      throw error
    }
  }

  const beside =
    <Body, Result>(name: keyof HeavyWork) =>
    async (body: Body, { client, gone }: Waiting): Promise<Result> => {
      if (isEnding) throw ending()
      const over = new AbortController()
      const leave = () => over.abort(gone.reason)
      if (gone.aborted) leave()
      gone.addEventListener('abort', leave, { once: true })
      underWay.add(over)
      return inTurn<Body, Result>(name, body, { client, gone: over.signal })
        .catch((error: unknown) => {
          throw over.signal.aborted && !gone.aborted ? ending() : error
        })
        .finally(() => {
          gone.removeEventListener('abort', leave)
          underWay.delete(over)
        })
    }

  async function inTurn<Body, Result>(name: keyof HeavyWork, body: Body, waiting: Waiting): Promise<Result> {
    await turn(waiting)
    try {
      return await run(name, body, waiting.gone)
    } finally {
      running -= 1
      queue.next()?.()
    }
  }

  return {
    heavyWork: {
      cutList: beside('cutList'),
      cutListPdf: beside('cutListPdf'),
      designCheck: beside('designCheck'),
      buildSheetPdf: beside('buildSheetPdf'),
      driverMeasurement: beside('driverMeasurement'),
      asBuilt: beside('asBuilt'),
    },
    load: () => ({ running, waiting: queue.waiting() }),
    giveUp: () => {
      isEnding = true
      for (const over of underWay) over.abort()
      return underWay.size
    },
    close: () => pool.destroy(),
  }
}

const busy = (cause: string): Refused =>
  new Refused('busy', `${cause} Try again in a few seconds, or ask for less effort.`)

const ending = (): Refused =>
  new Refused('busy', 'The service ends before this work could be finished. Try again in a few seconds.')
