import { type Static, type TProperties, type TSchema, Type } from 'typebox'
import type { Fault } from '../core/outcome.ts'
import type { DecimalMark } from '../core/quantity.ts'
import { oneOf } from '../schema/one-of.ts'
import { isOffered } from './drawing-choice.ts'
import type { Form } from './forms.ts'
import { type Query, queryBody } from './query-body.ts'
import { bodyReader } from './read-body.ts'
import { unknownName } from './say-fault.ts'
import { pointerTo, type SchemaNode } from './schema-node.ts'

/** What a calculation has to show, which is what its query can ask for. */
export interface Offer {
  forms: readonly Form[]
  /** Names of the tables for `csv`; the first is the usual one. */
  tables: readonly string[]
  /** Names of the pictures for `svg`; the first is the usual one. */
  pictures: readonly string[]
}

const FORM_SAID: Record<Form, string> = {
  json: 'the whole answer',
  text: 'the sentence of `answer`',
  csv: 'a table',
  svg: 'a picture',
  pdf: 'the sheet to print',
  dxf: 'the panels for a cutting program',
  html: 'the sheet as a page',
}

/** How the answer is wanted; these names are the same on every calculation and stand in the query. */
const everyOption = ({ forms, tables, pictures }: Offer) =>
  Type.Object(
    {
      working: Type.Optional(
        Type.Boolean({
          description: 'true adds the working: every formula with its values',
          examples: [true],
        }),
      ),
      format: Type.Optional(
        oneOf(
          forms,
          `${forms.map((form) => `${form}: ${FORM_SAID[form]}`).join('; ')}. Stronger than Accept`,
        ),
      ),
      table: Type.Optional(oneOf(tables, `With csv: which table of the answer; ${tables[0]} when left out`)),
      picture: Type.Optional(oneOf(pictures, `With svg: which picture; ${pictures[0]} when left out`)),
      sheet: Type.Optional(
        Type.Integer({
          description:
            'With svg: the cutting diagram of this board alone, counted from 1 in the order of `sheets`; all of them when left out',
          minimum: 1,
          maximum: 50_000,
          examples: [1],
        }),
      ),
      panel: Type.Optional(
        Type.String({
          description: 'With svg or dxf: the panel of this name alone; all of them when left out',
          minLength: 1,
          maxLength: 60,
          examples: ['front'],
        }),
      ),
      paper: Type.Optional(oneOf(['a4', 'letter'], 'With pdf: size of the paper; a4 when left out')),
      pick: Type.Optional(
        Type.String({
          description:
            'Path of one value of the answer, such as verdict: the answer is then that bare value as text, for a spreadsheet cell; refused where there is no value',
          minLength: 1,
          maxLength: 400,
          examples: ['verdict'],
        }),
      ),
      decimal: Type.Optional(
        oneOf(
          ['point', 'comma'],
          'comma: numbers in the query and in text may have a decimal comma, and the number picked gets one; a table then parts its columns by semicolons',
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
export type ViewOptions = Static<ReturnType<typeof everyOption>>

export interface ViewOptionsReader {
  schema: TSchema
  properties: TProperties
  /** Takes the view options out of a query; what is left are fields of the calculation, or unknown. */
  split: (query: Query) => { options: Query; fields: Query }
  read: (options: Query) => Promise<{ body: ViewOptions } | { faults: Fault[] }>
  /** Query names of a POST that are no view options, or none of those that are taken. */
  unknown: (fields: Query, taken?: readonly string[]) => Fault[]
}

/** Reads the options of one calculation; it does not know those that ask for forms it does not have. */
export function viewOptionsReader(offer: Offer): ViewOptionsReader {
  const every = everyOption(offer)
  const properties: TProperties = Object.fromEntries(
    Object.entries(every.properties).filter(
      ([name]) =>
        (name !== 'picture' || offer.forms.includes('svg')) &&
        (name !== 'paper' || offer.forms.includes('pdf')) &&
        isOffered(name, offer.pictures),
    ),
  )
  const schema = Type.Unsafe<ViewOptions>({ ...every, properties })
  const shape: SchemaNode = { ...every, properties }
  const names = Object.keys(properties)
  const readOptions = bodyReader(schema)
  return {
    schema,
    properties,
    split: (query) => {
      if (isEmpty(query)) return { options: {}, fields: {} }
      const [options, fields] = [true, false].map((own) =>
        Object.fromEntries(Object.entries(query).filter(([name]) => names.includes(name) === own)),
      )
      return { options: options ?? {}, fields: fields ?? {} }
    },
    read: async (options) => {
      if (isEmpty(options)) return { body: {} }
      const { body, faults } = queryBody(shape, options)
      return faults.length > 0 ? { faults } : readOptions(body)
    },
    unknown: (fields, taken = names) =>
      Object.keys(fields).map((name) => ({
        at: pointerTo('', name),
        message: `in the query ${unknownName(name, taken)}`,
      })),
  }
}

/** Most requests have no query; they shall not pay for one. */
const isEmpty = (query: Query): boolean => Object.keys(query).length === 0

/** Needed before the options are read, to read the numbers in them. */
export const decimalOf = (options: Query): DecimalMark => (options['decimal'] === 'comma' ? 'comma' : 'point')
