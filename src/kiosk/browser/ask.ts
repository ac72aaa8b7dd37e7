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
/** Nobody stands at a screen for longer, whatever something between says. */
const LONGEST_PAUSE_S = 60
/** After this a service that gives no sign counts as away. */
const PATIENCE_MS = 30_000

/** Asks the service; only an abort by the page itself throws. */
export async function ask<Body>(
  path: string,
  body: unknown,
  signal: AbortSignal,
  patienceMs = PATIENCE_MS,
): Promise<Reply<Body>> {
  const said = await send(path, body, signal, patienceMs)
  if (said === 'silent') return { away: 'The service does not answer.', retryAfterS: A_MOMENT_S }
  const { reply } = said
  const read = jsonIn(await said.bytes.text())
  if (isOurs(reply) && isAnswer<Body>(read)) return { answer: read }
  if (isProblem(read) && reply.status < 500 && reply.status !== 429) return { faults: faultsOf(read) }
  const after = Number(reply.headers.get('retry-after'))
  return {
    away:
      reply.status === 503 || reply.status === 429
        ? 'The service is busy.'
        : `The service failed (${reply.status}).`,
    retryAfterS: after > 0 ? Math.min(after, LONGEST_PAUSE_S) : A_MOMENT_S,
  }
}

const faultsOf = ({ errors, detail }: Problem): Faults =>
  errors.length > 0 ? errors : [{ at: '', message: detail }]

/** Other forms of an answer: a picture, a sheet; `none` where the design has none, `away` where it may come yet. */
export async function askFor(
  path: string,
  body: unknown,
  signal: AbortSignal,
  patienceMs = PATIENCE_MS,
): Promise<Blob | 'none' | 'away'> {
  const said = await send(path, body, signal, patienceMs)
  if (said === 'silent' || said.reply.status >= 500 || said.reply.status === 429) return 'away'
  if (said.reply.ok) return isOurs(said.reply) ? said.bytes : 'away'
  return 'none'
}

/** Every answer of the service has a name; a page that something between has put in its place has none. */
const isOurs = ({ ok, headers }: Response): boolean => ok && headers.has('x-request-id')

/** What came back, read to its end; `silent` where it broke off, or gave no sign for too long. */
async function send(
  path: string,
  body: unknown,
  signal: AbortSignal,
  patienceMs: number,
): Promise<{ reply: Response; bytes: Blob } | 'silent'> {
  const waiting = new AbortController()
  const giveUp = () => waiting.abort(signal.reason)
  let tooLong: ReturnType<typeof setTimeout> | undefined
  const wait = () => {
    clearTimeout(tooLong)
    tooLong = setTimeout(() => waiting.abort(), patienceMs)
  }
  signal.addEventListener('abort', giveUp)
  try {
    signal.throwIfAborted()
    wait()
    const reply = await fetch(path, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
      signal: waiting.signal,
    })
    return { reply, bytes: await bytesOf(reply, wait) }
  } catch (error) {
    if (signal.aborted) throw error
    return 'silent'
  } finally {
    clearTimeout(tooLong)
    signal.removeEventListener('abort', giveUp)
  }
}

/** On a slow network each part that comes is a sign. */
async function bytesOf({ body, headers }: Response, sign: () => void): Promise<Blob> {
  const parts: Uint8Array<ArrayBuffer>[] = []
  const reader = body?.getReader()
  for (;;) {
    sign()
    const part = await reader?.read()
    if (part?.value === undefined) break
    parts.push(part.value)
  }
  return new Blob(parts, { type: headers.get('content-type') ?? '' })
}

/** A page that something between has put in place of an answer is none, and is told by its status. */
function jsonIn(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}

/** The contract holds the shape of a 200. */
const isAnswer = <Body>(read: unknown): read is Body =>
  typeof read === 'object' &&
  read !== null &&
  'answer' in read &&
  typeof read.answer === 'string' &&
  'findings' in read &&
  Array.isArray(read.findings)

const isProblem = (read: unknown): read is Problem =>
  typeof read === 'object' &&
  read !== null &&
  'errors' in read &&
  Array.isArray(read.errors) &&
  read.errors.every((error: unknown) => isFault(error))

const isFault = (error: unknown): boolean =>
  typeof error === 'object' &&
  error !== null &&
  'at' in error &&
  'message' in error &&
  [error.at, error.message].every((text) => typeof text === 'string')

export const isAbort = (error: unknown): boolean =>
  error instanceof DOMException && error.name === 'AbortError'

export const designCheck = (draft: Draft, signal: AbortSignal): Promise<Reply<Answer>> =>
  ask<Answer>('/v1/design-check', draft, signal)
