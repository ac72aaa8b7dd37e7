import type { FastifyReply, FastifyRequest } from 'fastify'
import { pick } from '../views/pick.ts'
import type { Frame } from './answer-frame.ts'
import { Refused } from './problem.ts'
import type { ViewOptions } from './view-options.ts'

export type Form = 'json' | 'text'

const MEDIA_TYPES = { json: 'application/json', text: 'text/plain' } as const satisfies Record<Form, string>

const ON_OFFER = Object.entries(MEDIA_TYPES)
  .map(([form, type]) => `${form} (${type})`)
  .join(' and ')

/** The form a client wants, by `?format=` before Accept; refused when the service does not have it. */
export function wantedForm(options: ViewOptions, request: FastifyRequest): Form {
  if (options.pick !== undefined) return 'text'
  if (options.format !== undefined) return options.format
  const accepted = request.accepts().type(Object.values(MEDIA_TYPES))
  if (accepted === MEDIA_TYPES.json) return 'json'
  if (accepted === MEDIA_TYPES.text) return 'text'
  throw new Refused('not-acceptable', `On offer are ${ON_OFFER}; ask by ?format= or by the Accept header.`)
}

/** Sends the answer whole, as its sentence, or as one bare value. */
export function represent(answer: Frame, form: Form, options: ViewOptions, reply: FastifyReply) {
  if (form === 'json') return reply.type('application/json; charset=utf-8').send(answer)
  return reply.type('text/plain; charset=utf-8').send(textOf(answer, options))
}

function textOf(answer: Frame, options: ViewOptions): string {
  if (options.pick === undefined) return answer.answer
  const picked = pick(answer, options.pick, options.decimal)
  if ('text' in picked) return picked.text
  if ('fault' in picked) throw unknownPick(picked.fault, picked.known)
  // Only a blocker is sure to be why; other findings may have nothing to do with this value.
  const blocker = answer.findings.find(({ severity }) => severity === 'blocker')
  throw unknownPick(blocker === undefined ? picked.noValue : `${picked.noValue}: ${blocker.message}`)
}

/** The short message for a cell; all the names in the detail. */
function unknownPick(message: string, known = ''): Refused {
  const detail = /[.?]$/.test(message) || known === '' ? `${message} ${known}` : `${message}. ${known}`
  return new Refused('unknown-pick', detail.trim(), [{ at: '/pick', message }])
}
