import { type TSchema, Type } from 'typebox'
import { hasType, isRecord, resolved, type SchemaNode } from './schema-node.ts'

const DEEPEST = 6

interface Place {
  name: string
  required: boolean
  seen: readonly SchemaNode[]
  example: unknown
  /** What the nearest described schema above says. */
  description?: string | undefined
}

/**
 * The dotted names by which a query gives the fields of a body, for the contract: `driver.fsHz`, `drivers.0.id`.
 * Of a list of objects the first is shown; a shape that holds itself is shown once.
 */
export function flatParameters(body: SchemaNode, example: unknown): Record<string, TSchema> {
  return Object.fromEntries(flat(body, { name: '', required: true, seen: [], example }))
}

function flat(node: SchemaNode, place: Place): [string, TSchema][] {
  const schema = resolved(node)
  if (place.seen.includes(schema) || place.seen.length > DEEPEST) return []
  const description = schema.description ?? place.description
  const below = { ...place, seen: [...place.seen, schema], description }
  if (schema.anyOf !== undefined)
    return schema.anyOf.flatMap((branch) => flat(branch, { ...below, required: false }))
  if (schema.properties !== undefined) return flatMembers(schema, below)
  return hasType(schema, 'array') ? flatList(schema, below) : [[place.name, parameter(schema, below)]]
}

function flatMembers(schema: SchemaNode, place: Place): [string, TSchema][] {
  return Object.entries(schema.properties ?? {}).flatMap(([member, node]) =>
    flat(node, {
      name: place.name === '' ? member : `${place.name}.${member}`,
      required: place.required && (schema.required ?? []).includes(member),
      seen: place.seen,
      description: place.description,
      example: isRecord(place.example) ? place.example[member] : undefined,
    }),
  )
}

function flatList(schema: SchemaNode, place: Place): [string, TSchema][] {
  const items = resolved(schema.items ?? {})
  if (items.properties === undefined) return [[place.name, parameter(schema, place)]]
  const first = Array.isArray(place.example) ? place.example[0] : undefined
  return flatMembers(items, { ...place, name: `${place.name}.0`, example: first })
}

/** `none` stands for null in a query. Only the fields of the one example have examples, so that together they run. */
function parameter(schema: SchemaNode, { required, example, description }: Place): TSchema {
  const { examples: _others, ...named } = schema
  const isNullable = hasType(schema, 'null')
  const shown = Type.Unsafe({
    ...named,
    description: isNullable ? `${description}; in a query: none for null` : description,
    ...(isNullable && { type: ['number', 'string'] }),
    ...(isExampleOf(schema, example) && { examples: [example] }),
  })
  return required ? shown : Type.Optional(shown)
}

/** Of a choice between shapes only the one that the example has gets it. */
const isExampleOf = (schema: SchemaNode, example: unknown): boolean =>
  example !== undefined && !isRecord(example) && hasType(schema, 'array') === Array.isArray(example)
