import type { Socket } from 'node:net'
import type { FastifyError, FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { PROBLEMS, type ProblemName, problemBody, problemLine, Refused } from './problem.ts'

/** What the server's own refusals mean; any other 4xx is a request that could not be read. */
const BY_STATUS = new Map<number, ProblemName>([
  [404, 'not-found'],
  [408, 'timed-out'],
  [413, 'too-large'],
  [415, 'not-json'],
  [431, 'headers-too-large'],
])

/** One error handler and one not-found handler make every problem; register them before the routes. */
export function answerProblems(app: FastifyInstance): void {
  const methods = new Map<string, Set<string>>()
  app.addHook('onRoute', ({ url, method }) => {
    const known = methods.get(url) ?? new Set()
    for (const name of [method].flat()) known.add(name)
    methods.set(url, known)
  })
  app.setErrorHandler((error: FastifyError, request, reply) => answerError(error, request, reply))
  app.setNotFoundHandler((request, reply) => {
    const path = request.url.split('?')[0] ?? ''
    const known = methods.get(path)
    if (known === undefined) throw new Refused('not-found', 'Nothing is under this path; see /openapi.json.')
    const allowed = [...known, 'OPTIONS'].join(', ')
    reply.header('allow', allowed)
    if (request.method === 'OPTIONS') return reply.code(204).send()
    throw new Refused('method-not-allowed', `${path} takes ${allowed}.`)
  })
}

export function answerError(error: FastifyError | Refused, request: FastifyRequest, reply: FastifyReply) {
  const refused = asRefused(error)
  if (refused.problem === 'our-fault') request.log.error({ err: error }, 'a mistake of ours')
  const { status } = PROBLEMS[refused.problem]
  if (status < 500 && wantsLine(request.query)) {
    return reply
      .code(200)
      .type('text/plain; charset=utf-8')
      .send(problemLine(refused.message, refused.faults))
  }
  const body = problemBody(refused.problem, refused.message, request.id, refused.faults)
  return reply.code(status).type('application/problem+json').send(JSON.stringify(body))
}

function asRefused(error: FastifyError | Refused): Refused {
  if (error instanceof Refused) return error
  const status = error.statusCode ?? 500
  if (status >= 500)
    return new Refused('our-fault', 'The service failed; nothing in the request has to change.')
  const problem = BY_STATUS.get(status) ?? 'not-readable'
  return new Refused(problem, PROBLEMS[problem].about)
}

const wantsLine = (query: unknown): boolean =>
  typeof query === 'object' && query !== null && 'errors' in query && query.errors === 'text'

/** What Node could not even parse as a request is answered on the bare connection. */
export function answerBrokenConnection(error: NodeJS.ErrnoException, socket: Socket): void {
  if (error.code === 'ECONNRESET' || !socket.writable) {
    socket.destroy()
    return
  }
  const name = BROKEN[error.code ?? ''] ?? 'not-readable'
  const { title, status } = PROBLEMS[name]
  const body = JSON.stringify(problemBody(name, title, crypto.randomUUID(), []))
  const head = [
    `HTTP/1.1 ${status} ${title}`,
    'Content-Type: application/problem+json',
    `Content-Length: ${Buffer.byteLength(body)}`,
    'Connection: close',
  ]
  socket.end(`${head.join('\r\n')}\r\n\r\n${body}`)
}

const BROKEN: Record<string, ProblemName> = {
  HPE_HEADER_OVERFLOW: 'headers-too-large',
  ERR_HTTP_REQUEST_TIMEOUT: 'timed-out',
}
