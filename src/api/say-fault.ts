import type { ErrorObject } from 'ajv/dist/2020.js'
import { nearestName } from '../core/nearest-name.ts'
import { UNIT_NAMES } from '../core/unit-names.ts'
import { COMMAS_READ } from './comma-hint.ts'
import { isRecord, resolved, type SchemaNode } from './schema-node.ts'

const LONGEST_ECHO = 60

/** What one fault of the validator says, by its keyword. */
const SAY: Record<string, (error: ErrorObject, schema: SchemaNode) => string> = {
  required: ({ params: { missingProperty } }, schema) => {
    const field = schema.properties?.[missingProperty]
    return field === undefined ? 'is missing' : `is missing${said(resolved(field))}`
  },
  additionalProperties: ({ params: { additionalProperty } }, schema) =>
    unknownName(additionalProperty, Object.keys(schema.properties ?? {})),
  type: ({ data }, schema) => `must be ${typeSaid(schema)}, is ${echo(data)}${commaHint(data)}`,
  enum: ({ data }, schema) => wordExpected(data, schema.enum ?? []),
  minimum: ({ data, params: { limit } }, schema) =>
    `must be at least ${limit}${unitOf(schema)}, is ${echo(data)}`,
  maximum: ({ data, params: { limit } }, schema) =>
    `must be at most ${limit}${unitOf(schema)}, is ${echo(data)}`,
  exclusiveMinimum: ({ data, params: { limit } }, schema) =>
    `must be more than ${limit}${unitOf(schema)}, is ${echo(data)}`,
  exclusiveMaximum: ({ data, params: { limit } }, schema) =>
    `must be less than ${limit}${unitOf(schema)}, is ${echo(data)}`,
  minLength: ({ params: { limit } }) => `must not be shorter than ${limit} characters`,
  maxLength: ({ params: { limit } }) => `must not be longer than ${limit} characters`,
  minItems: ({ params: { limit } }) => `must hold at least ${limit}`,
  maxItems: ({ params: { limit } }) => `must hold at most ${limit}`,
  anyOf: ({ data }, schema) => `is ${echo(data)}; it takes ${schema.description ?? 'something else'}`,
}

/** What a fault says; `others` are the other shapes that the value could have had. */
export function sayFault(error: ErrorObject, others: readonly SchemaNode[] = []): string {
  const parent: object = error.parentSchema ?? {}
  const schema: SchemaNode = parent
  const name: unknown = error.params['additionalProperty']
  if (others.some((other) => Object.hasOwn(resolved(other).properties ?? {}, String(name)))) {
    const beside = Object.keys(error.data ?? {}).filter((given) =>
      Object.hasOwn(schema.properties ?? {}, given),
    )
    return `is given beside ${beside.join(' and ')}; one object takes one of the two`
  }
  return SAY[error.keyword]?.(error, schema) ?? error.message ?? 'does not fit'
}

/** The unknown name is refused with the nearest known one, or with all of them when none is near. */
export function unknownName(written: string, known: readonly string[]): string {
  const nearest = nearestName(written, known)
  if (nearest !== undefined) return `is not known here; did you mean "${nearest}"?`
  return known.length === 0 ? 'is not known here' : `is not known here; known are ${known.join(', ')}`
}

function wordExpected(written: unknown, words: readonly unknown[]): string {
  const known = words.map(String)
  const nearest = typeof written === 'string' ? nearestName(written, known) : undefined
  const meant = nearest === undefined ? '' : `; did you mean "${nearest}"?`
  return `must be one of ${known.join(', ')}, is ${echo(written)}${meant}`
}

const commaHint = (written: unknown): string =>
  typeof written === 'string' && /^[+-]?\d*,\d+$/.test(written)
    ? `; write ${Number(written.replace(',', '.'))}, in JSON without quotes; ${COMMAS_READ}`
    : ''

const TYPE_WORDS: Record<string, string> = {
  object: 'an object with named fields',
  array: 'a list',
  string: 'text',
  number: 'a number',
  integer: 'a whole number',
  boolean: 'true or false',
  null: 'null',
}

function typeSaid(schema: SchemaNode): string {
  const types = typeof schema.type === 'string' ? [schema.type] : (schema.type ?? [])
  const words = types.map((type) => TYPE_WORDS[type] ?? type).join(' or ')
  const unit = schema['x-unit']
  return unit === undefined ? words : `${words} in ${UNIT_NAMES[unit].written}, or text with its unit`
}

function unitOf(schema: SchemaNode): string {
  const unit = schema['x-unit']
  return unit === undefined ? '' : ` ${UNIT_NAMES[unit].written}`
}

function said(schema: SchemaNode): string {
  const unit = schema['x-unit']
  const inUnit = unit === undefined ? '' : ` in ${UNIT_NAMES[unit].written}`
  return schema.description === undefined ? '' : ` (${schema.description}${inUnit})`
}

function echo(value: unknown): string {
  if (Array.isArray(value)) return 'a list'
  if (isRecord(value)) return 'an object'
  // JSON can write numbers that no computer holds.
  if (value === Number.POSITIVE_INFINITY || value === Number.NEGATIVE_INFINITY) return 'too large a number'
  const text = JSON.stringify(value) ?? 'nothing'
  return text.length > LONGEST_ECHO ? `${text.slice(0, LONGEST_ECHO)}…` : text
}
