import type { DesignCheckSections } from '../../schema/design-check.ts'
import type { Finding, Verdict } from '../../schema/frame.ts'
import type { Problem } from '../../schema/problem.ts'
import type { Draft } from './draft.ts'

export type Answer = DesignCheckSections & {
  answer: string
  verdict: Verdict
  findings: Finding[]
  cautions: string[]
}
export type Faults = Problem['errors']

/** What came of asking: an answer, faults of the request, or a service that is away or busy. */
export type Reply<Body> = { answer: Body } | { faults: Faults } | { away: string; retryAfterS: number }

const A_MOMENT_S = 2

/** Asks the service; only an abort by the page itself throws. */
export async function ask<Body>(path: string, body: unknown, signal: AbortSignal): Promise<Reply<Body>> {
  const reply = await send(path, body, signal)
  if (!(reply instanceof Response)) return reply
  const read: unknown = await readJson(reply, signal)
  if (reply.ok && isAnswer<Body>(read)) return { answer: read }
  if (isProblem(read) && reply.status < 500 && reply.status !== 429) return { faults: faultsOf(read) }
  const after = Number(reply.headers.get('retry-after'))
  return {
    away:
      reply.status === 503 || reply.status === 429
        ? 'The service is busy.'
        : `The service failed (${reply.status}).`,
    retryAfterS: after > 0 ? after : A_MOMENT_S,
  }
}

const faultsOf = ({ errors, detail }: Problem): Faults =>
  errors.length > 0 ? errors : [{ at: '', message: detail }]

/** Other forms of an answer: a picture, a sheet; `none` where the design has none, `away` where it may come yet. */
export async function askFor(
  path: string,
  body: unknown,
  signal: AbortSignal,
): Promise<Blob | 'none' | 'away'> {
  const reply = await send(path, body, signal)
  if (!(reply instanceof Response) || reply.status >= 500 || reply.status === 429) return 'away'
  if (!reply.ok) return 'none'
  try {
    return await reply.blob()
  } catch (error) {
    if (signal.aborted) throw error
    return 'away'
  }
}

async function send(path: string, body: unknown, signal: AbortSignal) {
  try {
    return await fetch(path, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
      signal,
    })
  } catch (error) {
    if (signal.aborted) throw error
    return { away: 'The service does not answer.', retryAfterS: A_MOMENT_S }
  }
}

async function readJson(reply: Response, signal: AbortSignal): Promise<unknown> {
  try {
    return await reply.json()
  } catch (error) {
    if (signal.aborted) throw error
    return undefined
  }
}

/** The contract holds the shape of a 200; here it is told from a page that something between has put in its place. */
const isAnswer = <Body>(read: unknown): read is Body =>
  typeof read === 'object' && read !== null && 'answer' in read && typeof read.answer === 'string'

const isProblem = (read: unknown): read is Problem =>
  typeof read === 'object' && read !== null && 'errors' in read && Array.isArray(read.errors)

export const isAbort = (error: unknown): boolean =>
  error instanceof DOMException && error.name === 'AbortError'

export const designCheck = (draft: Draft, signal: AbortSignal): Promise<Reply<Answer>> =>
  ask<Answer>('/v1/design-check', draft, signal)
