import { type TProperties, Type } from 'typebox'
import { frameFields } from '../schema/frame.ts'
import { Problem } from '../schema/problem.ts'
import { ref } from '../schema/shared.ts'
import { PROBLEM_NAMES, PROBLEMS } from './problem.ts'

const problemContent = { 'application/problem+json': { schema: ref(Problem) } }

/** The answers of a calculation for the contract: the frame with its sections, its sentence, and the problems. */
export function responsesOf(sections: TProperties) {
  const schema = Type.Object({ ...frameFields, ...sections }, { additionalProperties: false })
  return {
    200: {
      description: 'The answer, also for a design that cannot work: its verdict is then blocked',
      content: {
        'application/json': { schema },
        'text/plain': { schema: Type.String({ description: 'The sentence of answer, or the value picked' }) },
      },
    },
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
