import fc, { type Arbitrary } from 'fast-check'
import { hasType, resolved, type SchemaNode } from '../../src/api/schema-node.ts'

type Bounds = SchemaNode & {
  minimum?: number
  maximum?: number
  maxLength?: number
  minItems?: number
  maxItems?: number
}

const DEEPEST = 6

/** Bodies that fit a schema: every number within its bounds, every optional field there or not. */
export function bodiesOf(node: SchemaNode, depth = 0): Arbitrary<unknown> {
  const schema: Bounds = resolved(node)
  if (schema.enum !== undefined) return fc.constantFrom(...schema.enum)
  if (schema.anyOf !== undefined) {
    const branches = depth < DEEPEST ? schema.anyOf : schema.anyOf.slice(0, 1)
    return fc.oneof(...branches.map((branch) => bodiesOf(branch, depth + 1)))
  }
  if (hasType(schema, 'null')) return fc.option(bodiesOf({ ...schema, type: 'number' }, depth))
  return plain(schema, depth)
}

function plain(schema: Bounds, depth: number): Arbitrary<unknown> {
  const { minimum: min = -1e6, maximum: max = 1e6 } = schema
  if (hasType(schema, 'number')) return fc.double({ min, max, noNaN: true })
  if (hasType(schema, 'integer')) return fc.integer({ min: Math.ceil(min), max: Math.floor(max) })
  if (hasType(schema, 'boolean')) return fc.boolean()
  if (hasType(schema, 'string'))
    return fc.string({ minLength: 1, maxLength: Math.min(8, schema.maxLength ?? 8) })
  if (hasType(schema, 'array')) {
    const { items = {}, minItems = 0, maxItems = 3 } = schema
    return fc.array(bodiesOf(items, depth + 1), {
      minLength: minItems,
      maxLength: Math.min(maxItems, minItems + 2),
    })
  }
  const members = Object.entries(schema.properties ?? {})
  return fc.record(Object.fromEntries(members.map(([name, member]) => [name, bodiesOf(member, depth + 1)])), {
    requiredKeys: [...(schema.required ?? [])],
  })
}
