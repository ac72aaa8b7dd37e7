import { type TProperties, type TSchema, Type } from 'typebox'
import { frameFields } from '../schema/frame.ts'
import { Problem } from '../schema/problem.ts'
import { ref } from '../schema/shared.ts'
import { type Form, MEDIA_TYPES } from './forms.ts'
import { PROBLEM_NAMES, PROBLEMS } from './problem.ts'

const problemContent = { 'application/problem+json': { schema: ref(Problem) } }

const TEXT_SAID: Record<Exclude<Form, 'json'>, string> = {
  text: 'The sentence of answer, or the value picked',
  csv: 'A table, one header row, lines end in CRLF',
  svg: 'A picture',
  pdf: 'A sheet to print',
  dxf: 'Panels in millimetres',
  html: 'A sheet as a page',
}

/** The whole answer of a calculation: the frame with its sections. */
export const answerSchema = (sections: TProperties): TSchema =>
  Type.Object({ ...frameFields, ...sections }, { additionalProperties: false })

/** The answers of a calculation for the contract: the whole one, its other forms, and the problems. */
export function responsesOf(sections: TProperties, forms: readonly Form[]) {
  const others = forms.flatMap((form) =>
    form === 'json'
      ? []
      : [[MEDIA_TYPES[form], { schema: Type.String({ description: TEXT_SAID[form] }) }] as const],
  )
  return {
    200: {
      description: 'The answer, also for a design that cannot work: its verdict is then blocked',
      content: {
        [MEDIA_TYPES.json]: { schema: answerSchema(sections) },
        ...Object.fromEntries(others),
      },
    },
    // No content of any type: RFC 9110, section 15.4.5.
    304: { type: 'null', description: 'The client has this answer already, by the tag in If-None-Match' },
    ...Object.fromEntries(
      statuses().map(({ status, title }) => [status, { description: title, content: problemContent }]),
    ),
  }
}

/** Every status a calculation can refuse with, once, under the title of its first kind. */
function statuses() {
  const kinds = PROBLEM_NAMES.map((name) => PROBLEMS[name])
  return kinds.filter(({ status }, index) => kinds.findIndex((kind) => kind.status === status) === index)
}
