import { ServerResponse } from 'node:http'
import type { Socket } from 'node:net'
import type { FastifyError, FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { addressFault } from './address-fault.ts'
import { bodyIsUnread, lingering } from './linger.ts'
import { notReadable, PROBLEMS, type ProblemName, problemBody, problemLine, Refused } from './problem.ts'

/** What the server's own refusals mean; any other 4xx is a request that could not be read. */
const BY_STATUS = new Map<number, ProblemName>([
  [404, 'not-found'],
  [408, 'timed-out'],
  [413, 'too-large'],
  [415, 'not-json'],
  [431, 'headers-too-large'],
])

/** About as long as a piece of heavy work takes. */
const RETRY_AFTER_S = 5

/** One error handler and one not-found handler make every problem; register them before the routes. */
export function answerProblems(app: FastifyInstance): void {
  const methods = new Map<string, Set<string>>()
  app.addHook('onRoute', ({ url, method }) => {
    const known = methods.get(url) ?? new Set()
    for (const name of [method].flat()) known.add(name)
    methods.set(url, known)
  })
  app.setErrorHandler((error: FastifyError, request, reply) => answerError(error, request, reply))
  const refuseAddress = async (request: FastifyRequest, reply: FastifyReply) => {
    const path = request.url.split('?')[0] ?? ''
    const known = methods.get(path)
    if (known === undefined) throw new Refused('not-found', 'Nothing is under this path; see /openapi.json.')
    const allowed = [...known, 'OPTIONS'].join(', ')
    reply.header('allow', allowed)
    if (request.method === 'OPTIONS') return reply.code(204).send()
    throw new Refused('method-not-allowed', `${path} takes ${allowed}.`)
  }
  app.setNotFoundHandler(refuseAddress)
  // Nobody needs the body of such a request, and what it is would only hide that it went astray.
  app.addHook('preParsing', async (request, reply) => {
    if (request.is404) await refuseAddress(request, reply)
  })
}

export function answerError(error: FastifyError | Refused, request: FastifyRequest, reply: FastifyReply) {
  const refused = asRefused(error, request.url)
  // Work that is given up because its client has gone fails too, and is nobody's mistake.
  if (refused.problem === 'our-fault' && !reply.raw.destroyed)
    request.log.error({ err: error }, 'a mistake of ours')
  const { status } = PROBLEMS[refused.problem]
  // An address that cannot be decoded is refused before any hook could say this.
  reply.header('x-request-id', request.id).header('x-content-type-options', 'nosniff')
  if (refused.problem === 'busy') reply.header('retry-after', RETRY_AFTER_S)
  if (status < 500 && wantsLine(request.url)) {
    reply.code(200).type('text/plain; charset=utf-8')
    return sent(problemLine(refused.message, refused.faults), request, reply)
  }
  const body = problemBody(refused.problem, refused.message, request.id, refused.faults)
  reply.code(status).type('application/problem+json')
  return sent(JSON.stringify(body), request, reply)
}

/** A request can be refused before its body has arrived; the connection then stays until it has, and closes. */
function sent(text: string, request: FastifyRequest, reply: FastifyReply) {
  if (!bodyIsUnread(request.raw)) return reply.send(text)
  return reply
    .header('connection', 'close')
    .header('content-length', Buffer.byteLength(text))
    .send(lingering(text, request.raw))
}

function asRefused(error: FastifyError | Refused, url: string): Refused {
  if (error instanceof Refused) return error
  const status = error.statusCode ?? 500
  if (status >= 500)
    return new Refused('our-fault', 'The service failed; nothing in the request has to change.')
  if (error.code === 'FST_ERR_BAD_URL') return notReadable(addressFault(url))
  const problem = BY_STATUS.get(status)
  return problem === undefined
    ? notReadable(PROBLEMS['not-readable'].about)
    : new Refused(problem, PROBLEMS[problem].about)
}

/** Asked of the address itself: of an address that cannot be decoded the server has no query. */
const wantsLine = (url: string): boolean =>
  new URLSearchParams(/\?.*/s.exec(url)?.[0] ?? '').get('errors') === 'text'

/** What Node could not even parse as a request is answered on the bare connection. */
export function answerBrokenConnection(error: NodeJS.ErrnoException, socket: Socket): void {
  if (error.code === 'ECONNRESET' || !socket.writable || isAnswered(socket)) {
    socket.destroy()
    return
  }
  const name = BROKEN[error.code ?? ''] ?? 'not-readable'
  const { title, status } = PROBLEMS[name]
  const cause = 'reason' in error ? `${title}: ${String(error.reason)}` : title
  const faults = [{ at: '', message: cause }]
  const id = crypto.randomUUID()
  const body = JSON.stringify(problemBody(name, cause, id, faults))
  const head = [
    `HTTP/1.1 ${status} ${title}`,
    'Content-Type: application/problem+json',
    `Content-Length: ${Buffer.byteLength(body)}`,
    'Connection: close',
    `X-Request-Id: ${id}`,
    'X-Content-Type-Options: nosniff',
  ]
  socket.end(`${head.join('\r\n')}\r\n\r\n${body}`)
}

/** true when the answer to this request has begun: a second one would be taken for the answer to the next. */
function isAnswered(socket: Socket): boolean {
  // Node's own handler asks the same; there is no public name for it.
  const answer: unknown = Reflect.get(socket, '_httpMessage')
  return answer instanceof ServerResponse && answer.headersSent
}

const BROKEN: Record<string, ProblemName> = {
  HPE_HEADER_OVERFLOW: 'headers-too-large',
  ERR_HTTP_REQUEST_TIMEOUT: 'timed-out',
}
