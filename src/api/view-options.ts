import { type Static, type TSchema, Type } from 'typebox'
import type { Fault } from '../core/outcome.ts'
import type { DecimalMark } from '../core/quantity.ts'
import { oneOf } from '../schema/box.ts'
import { type Query, queryBody } from './query-body.ts'
import { bodyReader } from './read-body.ts'
import { unknownName } from './say-fault.ts'
import { pointerTo } from './schema-node.ts'

/** How the answer is wanted; these names are the same on every calculation and stand in the query. */
export const ViewOptions = Type.Object(
  {
    working: Type.Optional(
      Type.Boolean({ description: 'true adds the working: every formula with its values', examples: [true] }),
    ),
    format: Type.Optional(
      oneOf(['json', 'text'], 'json: the whole answer; text: the sentence of `answer`. Stronger than Accept'),
    ),
    pick: Type.Optional(
      Type.String({
        description:
          'Path of one value of the answer, such as verdict: the answer is then that bare value as text, for a spreadsheet cell; refused where there is no value',
        minLength: 1,
        maxLength: 200,
        examples: ['verdict'],
      }),
    ),
    decimal: Type.Optional(
      oneOf(
        ['point', 'comma'],
        'comma: numbers in the query and in text may have a decimal comma, and the number picked gets one',
      ),
    ),
    errors: Type.Optional(
      oneOf(
        ['problem', 'text'],
        'text: an error is one line with status 200, because a cell shows nothing of an error answer',
      ),
    ),
  },
  { additionalProperties: false },
)
export type ViewOptions = Static<typeof ViewOptions>

const SHAPE: TSchema = ViewOptions
const NAMES = Object.keys(ViewOptions.properties)
const read = bodyReader(ViewOptions)

/** Takes the view options out of a query; what is left are fields of the calculation, or unknown. */
export function splitQuery(query: Query): { options: Query; fields: Query } {
  const [options, fields] = [true, false].map((own) =>
    Object.fromEntries(Object.entries(query).filter(([name]) => NAMES.includes(name) === own)),
  )
  return { options: options ?? {}, fields: fields ?? {} }
}

/** Needed before the options are read, to read the numbers in them. */
export const decimalOf = (options: Query): DecimalMark => (options['decimal'] === 'comma' ? 'comma' : 'point')

/** Query names of a POST that are no view options. */
export const unknownOptions = (fields: Query): Fault[] =>
  Object.keys(fields).map((name) => ({
    at: pointerTo('', name),
    message: `in the query ${unknownName(name, NAMES)}`,
  }))

export async function readViewOptions(query: Query): Promise<{ body: ViewOptions } | { faults: Fault[] }> {
  const { body, faults } = queryBody(SHAPE, query)
  return faults.length > 0 ? { faults } : read(body)
}
