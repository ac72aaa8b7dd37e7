import type { Fault } from '../core/outcome.ts'
import { COMMA, type DecimalMark, type QuantityField, readQuantity } from '../core/quantity.ts'
import { COMMAS_READ } from './comma-hint.ts'
import { hasType, isRecord, meantBranch, pointerTo, resolved, type SchemaNode } from './schema-node.ts'

/** A place of the body where text stands for a dimensional number. */
interface TextSpot {
  at: string
  text: string
  field: QuantityField
  put: (value: number) => void
}

/**
 * Turns text into numbers wherever the schema carries `x-unit`, in place, before the body is validated,
 * so that there is one schema and one type and no core function ever meets text.
 * @returns a fault for every text that is no quantity of its field
 */
export async function readTexts(schema: SchemaNode, body: unknown, decimal: DecimalMark): Promise<Fault[]> {
  const faults: Fault[] = []
  for (const spot of textSpots(schema, body, '')) {
    const read = await readQuantity(spot.text, spot.field, decimal)
    if ('value' in read) spot.put(read.value)
    else faults.push({ at: spot.at, message: `${read.fault}${commaHint(spot.text, decimal)}` })
  }
  return faults
}

const commaHint = (text: string, decimal: DecimalMark): string =>
  decimal === 'point' && COMMA.test(text) ? `; ${COMMAS_READ}` : ''

function* textSpots(node: SchemaNode, value: unknown, at: string): Generator<TextSpot> {
  const schema = meant(resolved(node), value)
  if (Array.isArray(value)) yield* spotsOfItems(schema.items, value, at)
  else if (isRecord(value)) yield* spotsOfMembers(schema.properties, value, at)
}

function* spotsOfItems(items: SchemaNode | undefined, list: unknown[], at: string): Generator<TextSpot> {
  if (items === undefined) return
  const name = at.slice(at.lastIndexOf('/') + 1)
  for (const [index, item] of list.entries()) {
    const place = pointerTo(at, index)
    const put = (value: number) => {
      list[index] = value
    }
    yield* spot(items, name, item, place, put)
  }
}

function* spotsOfMembers(
  properties: Record<string, SchemaNode> | undefined,
  record: Record<string, unknown>,
  at: string,
): Generator<TextSpot> {
  for (const [name, member] of Object.entries(record)) {
    const schema = properties !== undefined && Object.hasOwn(properties, name) ? properties[name] : undefined
    if (schema === undefined) continue
    const put = (value: number) => {
      record[name] = value
    }
    yield* spot(schema, name, member, pointerTo(at, name), put)
  }
}

function* spot(
  node: SchemaNode,
  name: string,
  value: unknown,
  at: string,
  put: (value: number) => void,
): Generator<TextSpot> {
  const schema = resolved(node)
  const unit = schema['x-unit']
  if (unit === undefined || typeof value !== 'string') yield* textSpots(schema, value, at)
  else if (hasType(schema, 'number'))
    yield { at, text: value, field: { name, unit, ...exampleOf(schema) }, put }
}

function exampleOf(schema: SchemaNode): { example?: number } {
  const example = schema.examples?.[0]
  return typeof example === 'number' ? { example } : {}
}

function meant(schema: SchemaNode, value: unknown): SchemaNode {
  if (schema.anyOf === undefined || !isRecord(value)) return schema
  return resolved(meantBranch(schema.anyOf, { names: Object.keys(value) }) ?? {})
}
