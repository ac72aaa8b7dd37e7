import type { FastifyReply, FastifyRequest } from 'fastify'
import { csv } from '../views/csv.ts'
import { pick } from '../views/pick.ts'
import { type TableShape, tableFrom } from '../views/table.ts'
import type { Frame } from './answer-frame.ts'
import { pictureFor } from './drawing-choice.ts'
import { type Form, MEDIA_TYPES, type Shown, type Views } from './forms.ts'
import { PROBLEMS, Refused } from './problem.ts'
import type { ViewOptions } from './view-options.ts'

const ANYTHING = '*/*'

/** The form a client wants, by `?format=` before Accept; refused when the calculation does not have it. */
export function wantedForm(options: ViewOptions, forms: readonly Form[], request: FastifyRequest): Form {
  if (options.pick !== undefined) return 'text'
  if (options.format !== undefined) return options.format
  // The usual ways to ask for the whole answer, known without weighing one type against the other.
  const { accept = ANYTHING } = request.headers
  if (accept === ANYTHING || accept === MEDIA_TYPES.json) return 'json'
  const accepted = request.accepts().type(forms.map((form) => MEDIA_TYPES[form]))
  const form = forms.find((known) => MEDIA_TYPES[known] === accepted)
  if (form !== undefined) return form
  const offer = forms.map((known) => `${known} (${MEDIA_TYPES[known]})`).join(', ')
  throw new Refused('not-acceptable', `On offer are ${offer}; ask by ?format= or by the Accept header.`)
}

/** A sheet is a page without scripts that asks nobody for anything; its style is its own. */
const SHEET_POLICY = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; frame-ancestors 'none'"

/** A picture opened by itself is a page too. */
const PICTURE_POLICY = "default-src 'none'; style-src 'unsafe-inline'"

/** How a calculation shows an answer. */
export interface Showing<Answer, Body> {
  views: Views<Answer, Body>
  tables: ReadonlyMap<string, TableShape>
}

/** Sends the answer whole, as its sentence, as one bare value, or drawn. */
export async function represent<Answer extends Frame, Body>(
  { views, tables }: Showing<Answer, Body>,
  form: Form,
  shown: Shown<Answer, Body>,
  reply: FastifyReply,
) {
  const { answer, options } = shown
  const type = MEDIA_TYPES[form]
  reply.type(form === 'pdf' || form === 'dxf' ? type : `${type}; charset=utf-8`)
  if (form === 'json') return reply.send(answer)
  if (form === 'text') return reply.send(textOf(answer, options))
  if (form === 'csv') return reply.send(tableOf(tables, answer, options))
  const pictures = views.svg ?? {}
  const picture = pictureFor(options, form, Object.keys(pictures))
  const view = form === 'svg' ? pictures[picture] : views[form]
  if (view === undefined) throw new Error(`the calculation offers ${form} but has no view for it`)
  if (form === 'html') reply.header('content-security-policy', SHEET_POLICY)
  if (form === 'svg') reply.header('content-security-policy', PICTURE_POLICY)
  const made = await view(shown)
  if (made === null) throw new Refused('nothing-to-draw', PROBLEMS['nothing-to-draw'].about)
  return reply.send(typeof made === 'string' ? made : Buffer.from(made))
}

function tableOf(tables: ReadonlyMap<string, TableShape>, answer: Frame, options: ViewOptions): string {
  const [first = ''] = tables.keys()
  const shape = tables.get(options.table ?? first)
  if (shape === undefined) throw new Error('every table on offer has a shape')
  return csv(tableFrom(shape, answer), options.decimal)
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
