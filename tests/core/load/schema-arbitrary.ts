import fc, { type Arbitrary } from 'fast-check'
import { sharedSchema } from '../../../src/schema/shared.ts'

interface Schema {
  $ref?: string
  type?: string | string[]
  enum?: unknown[]
  anyOf?: Schema[]
  minimum?: number
  maximum?: number
  minItems?: number
  maxItems?: number
  items?: Schema
  properties?: Record<string, Schema>
  required?: string[]
}

/** Arrays stay short so that a request stays a request; the bounds of the numbers are tried in full. */
const LONGEST_ARRAY = 4

/** Any value that a schema of ours admits, its bounds often among the numbers. */
export const admittedBy = (schema: object): Arbitrary<unknown> => valuesOf(schema as Schema, 0)

function valuesOf(schema: Schema, depth: number): Arbitrary<unknown> {
  if (schema.$ref !== undefined) return valuesOf(resolved(schema.$ref), depth + 1)
  if (schema.enum !== undefined) return fc.constantFrom(...schema.enum)
  if (schema.anyOf !== undefined) return fc.oneof(...branchesOf(schema.anyOf, depth))
  switch (schema.type) {
    case 'number':
      return numberIn(schema.minimum ?? -1e9, schema.maximum ?? 1e9)
    case 'integer':
      return fc.integer({ min: schema.minimum ?? 0, max: schema.maximum ?? 100 })
    case 'boolean':
      return fc.boolean()
    case 'string':
      return fc.constantFrom('main', 'tweeter', 'other')
    case 'array':
      return fc.array(valuesOf(schema.items ?? {}, depth), {
        minLength: schema.minItems ?? 0,
        maxLength: Math.min(LONGEST_ARRAY, schema.maxItems ?? LONGEST_ARRAY),
      })
    default:
      return objectOf(schema, depth)
  }
}

/** Deep down only the branches that end there. */
function branchesOf(branches: Schema[], depth: number): Arbitrary<unknown>[] {
  const ending = depth > 6 ? branches.filter((branch) => !holdsArray(branch)) : branches
  return ending.map((branch) => valuesOf(branch, depth))
}

const numberIn = (min: number, max: number) =>
  fc.oneof(
    fc.constantFrom(min, max),
    fc.double({ min, max, noNaN: true }),
    fc.double({ min, max: Math.min(max, Math.max(min, 10)), noNaN: true }),
  )

function objectOf({ properties = {}, required = [] }: Schema, depth: number): Arbitrary<unknown> {
  const model = Object.fromEntries(
    Object.entries(properties).map(([name, schema]) => [name, valuesOf(schema, depth)]),
  )
  return fc.record(model, { requiredKeys: required })
}

const holdsArray = ({ properties = {} }: Schema) =>
  Object.values(properties).some(({ type }) => type === 'array')

function resolved(ref: string): Schema {
  const schema = sharedSchema(ref.replace(/#$/, ''))
  if (schema === undefined) throw new Error(`no schema ${ref}`)
  return schema as Schema
}

/** Where a result holds a number that is none. */
export function notFinite(value: unknown, at = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [at]
  if (typeof value === 'string') return /NaN|Infinity|undefined/.test(value) ? [at] : []
  if (value === null || typeof value !== 'object') return []
  return Object.entries(value).flatMap(([name, member]) => notFinite(member, `${at}/${name}`))
}
