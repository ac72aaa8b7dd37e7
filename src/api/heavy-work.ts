import { AsyncLocalStorage } from 'node:async_hooks'
import type { FastifyReply } from 'fastify'
import type { asBuilt } from '../core/as-built/as-built.ts'
import type { cutListInBox } from '../core/design/cut-list-in-box.ts'
import type { designCheck } from '../core/design/design-check.ts'
import type { driverMeasurement } from '../core/measurement/driver-measurement.ts'
import type { printed } from '../views/drawing/printed.ts'
import type { printedSheet } from '../views/sheet/printed-sheet.ts'

/** What may take long enough to keep other requests waiting, with how it is run beside them. */
export interface HeavyWork {
  cutList: Heavy<typeof cutListInBox>
  cutListPdf: Heavy<typeof printed>
  designCheck: Heavy<typeof designCheck>
  buildSheetPdf: Heavy<typeof printedSheet>
  driverMeasurement: Heavy<typeof driverMeasurement>
  asBuilt: Heavy<typeof asBuilt>
}

/** Who waits for a piece of work, and the signal that nobody waits any more. */
export interface Waiting {
  client: string
  gone: AbortSignal
}

/** A calculation done elsewhere; it is given up when nobody waits for it any more. */
export type Heavy<Compute extends (body: never) => unknown> = (
  body: Parameters<Compute>[0],
  waiting: Waiting,
) => Promise<Awaited<ReturnType<Compute>>>

declare module 'fastify' {
  interface FastifyInstance {
    heavyWork: HeavyWork
  }
}

/** Where heavy work is done, and for whom. */
export interface Aside {
  heavyWork: HeavyWork
  waiting: () => Waiting
}

/** Held beside the request, not in a header of it, so that no client can set it. */
const caller = new AsyncLocalStorage<AbortSignal>()

/** Does something for a client of another connection: requests made within are its own, and are given up when it goes. */
export const onBehalfOf = <Result>(gone: AbortSignal, call: () => PromiseLike<Result>): Promise<Result> =>
  // Awaited within: what `inject` gives back begins only when it is waited for.
  caller.run(gone, async () => await call())

/** Aborts when the client goes away before its answer, or the one on whose behalf the request is made. */
export function goneSignal(reply: FastifyReply): AbortSignal {
  const gone = new AbortController()
  reply.raw.once('close', () => gone.abort())
  const callerGone = caller.getStore()
  // A request made within the process has no connection that could close.
  const leave = () => reply.raw.destroy()
  if (callerGone?.aborted) leave()
  else callerGone?.addEventListener('abort', leave, { once: true })
  return gone.signal
}
