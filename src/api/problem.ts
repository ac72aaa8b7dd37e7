import type { Fault } from '../core/outcome.ts'
import type { Problem } from '../schema/problem.ts'
import { MOST_FAULTS } from './fault-list.ts'

/** A kind of problem: its fixed title and status, and what its page tells a client to do. */
interface ProblemKind {
  title: string
  status: number
  about: string
}

export const PROBLEMS = {
  'not-readable': {
    title: 'The request could not be read',
    status: 400,
    about:
      'The address, a header or the body is broken. A body is JSON (RFC 8259): no NaN or Infinity, no comments, no comma after the last member, no name twice in one object, and no member named __proto__.',
  },
  'foreign-site': {
    title: 'The request comes from a foreign site',
    status: 403,
    about:
      'The tools answer under localhost, an address in digits, or a name in ALLOWED_HOSTS, and to pages of the same site alone. This keeps pages of other sites from using a service on your network.',
  },
  'not-found': {
    title: 'No such address',
    status: 404,
    about: 'The service has nothing under this path. The contract at /openapi.json lists every path.',
  },
  'timed-out': {
    title: 'The request took too long to arrive',
    status: 408,
    about: 'The whole request must arrive within half a minute. Send it again.',
  },
  'method-not-allowed': {
    title: 'The address does not take this method',
    status: 405,
    about: 'The Allow header of the answer names the methods that this address takes.',
  },
  'not-acceptable': {
    title: 'The answer does not come in that form',
    status: 406,
    about:
      'Ask for one of the forms that the detail names, by the Accept header or by ?format=, or for any with Accept: */*.',
  },
  'too-large': {
    title: 'The body is too large',
    status: 413,
    about:
      'A body of JSON may have up to 256 KiB, of which a whole design needs about 2; rows as CSV may have up to 8 MiB.',
  },
  'not-json': {
    title: 'The body is of another media type',
    status: 415,
    about:
      'Send the body as JSON with the header Content-Type: application/json, or rows with text/csv where the contract takes them; plain, without a Content-Encoding.',
  },
  'invalid-input': {
    title: 'The request does not fit the contract',
    status: 422,
    about:
      'Every fault is listed in errors: `at` is the JSON Pointer of the field, `message` says what was expected. Unknown fields are refused, with the nearest known name, so that no mistyped value is silently left out.',
  },
  'unknown-pick': {
    title: 'The answer has no single value there',
    status: 422,
    about:
      '?pick= takes the path of one value in the answer, names and list positions joined by dots, such as port.lengthMm or findings.0.message. A value that does not exist for this request, null in the JSON, is refused too: a cell would count an empty text as 0.',
  },
  'nothing-to-draw': {
    title: 'The answer has nothing of this to draw',
    status: 422,
    about:
      'The picture or sheet asked for shows panels, a box or a port, and this answer has none. Ask for the JSON or the text to see why.',
  },
  'headers-too-large': {
    title: 'The address and headers are too large',
    status: 431,
    about: 'Address and headers together may have up to 16 KiB. Send a large design as the body of a POST.',
  },
  'too-many': {
    title: 'Too many requests',
    status: 429,
    about:
      'The service is set up to answer one client so many requests a minute. The Retry-After header says when to ask again. Many designs fit into one request, as the rows of a CSV body.',
  },
  busy: {
    title: 'The service is busy',
    status: 503,
    about:
      'More requests arrive than the machine can answer, too much heavy work is waiting, or the work asked for takes longer than it may. The Retry-After header says when to try again; less effort is answered sooner.',
  },
  'our-fault': {
    title: 'The service failed',
    status: 500,
    about:
      'This is a mistake in the service, not in the request. The log holds it under the name in `instance`.',
  },
} as const satisfies Record<string, ProblemKind>

export type ProblemName = keyof typeof PROBLEMS

export const PROBLEM_NAMES = Object.keys(PROBLEMS).filter((name): name is ProblemName => name in PROBLEMS)

export const problemPath = (name: ProblemName): string => `/problems/${name}`

/** Thrown by a route that refuses a request; the error handler makes the answer of it. */
export class Refused extends Error {
  readonly problem: ProblemName
  readonly faults: Fault[]

  constructor(problem: ProblemName, detail: string, faults: Fault[] = []) {
    super(detail)
    this.problem = problem
    this.faults = faults
  }
}

/** The cause said whole, and as the one fault of the request or of a member of it. */
export const notReadable = (cause: string, at = ''): Refused =>
  new Refused('not-readable', at === '' ? cause : `${at}: ${cause}`, [{ at, message: cause }])

/** One fault a field: the first that was found of it. */
export const oneEach = (faults: readonly Fault[]): Fault[] =>
  faults.filter((fault, index) => faults.findIndex(({ at }) => at === fault.at) === index)

/** Every fault found, one a field. */
export function invalidInput(faults: readonly Fault[]): Refused {
  const told = oneEach(faults)
  return new Refused(
    'invalid-input',
    told.length === 1
      ? 'One fault was found.'
      : `${told.length > MOST_FAULTS ? `More than ${MOST_FAULTS}` : told.length} faults were found.`,
    told,
  )
}

/** The problem as RFC 9457 (Nottingham, Wilde and Dalal, 2023) lays it out. */
export function problemBody(name: ProblemName, detail: string, requestId: string, faults: Fault[]): Problem {
  const { title, status } = PROBLEMS[name]
  return { type: problemPath(name), title, status, detail, instance: instanceOf(requestId), errors: faults }
}

const UUID = /^[\da-f]{8}(-[\da-f]{4}){3}-[\da-f]{12}$/i

/** A URI for this one occurrence (RFC 9562, section 4); a name that the client chose is a fragment of the request. */
const instanceOf = (requestId: string): string =>
  UUID.test(requestId) ? `urn:uuid:${requestId}` : `#${requestId}`

/** The problem as one line, for a spreadsheet cell, which shows nothing of an error answer. */
export function problemLine(detail: string, faults: readonly Fault[]): string {
  const told = faults.map(({ at, message }) => `${at} ${message}`.trim())
  return `error: ${(told.length === 0 ? [detail] : told).join('; ')}`.replace(/\s+/g, ' ')
}
