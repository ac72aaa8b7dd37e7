import type { Fault } from '../core/outcome.ts'
import { isRecord, pointerTo, resolved, type SchemaNode } from './schema-node.ts'

/** Lists up to this length are left to the validator. */
const SHORT = 200

export const hasLongList = (body: unknown): boolean =>
  Array.isArray(body)
    ? body.length > SHORT || body.some(hasLongList)
    : isRecord(body) && Object.values(body).some(hasLongList)

/**
 * Lists longer than the schema lets them be, in every shape that a value may have; nothing below such a list. The
 * validator takes a time that grows with the square of the wrong items of a list, so it never sees these.
 */
export function* longListFaults(node: SchemaNode, value: unknown, at: string): Generator<Fault> {
  const schema = resolved(node)
  for (const branch of schema.anyOf ?? []) yield* longListFaults(branch, value, at)
  if (Array.isArray(value)) yield* faultsOfList(schema, value, at)
  else if (isRecord(value)) yield* faultsOfMembers(schema, value, at)
}

function* faultsOfList({ items, maxItems }: SchemaNode, list: unknown[], at: string): Generator<Fault> {
  if (maxItems !== undefined && list.length > maxItems)
    yield { at, message: `must hold at most ${maxItems}, holds ${list.length}` }
  else if (items !== undefined)
    for (const [index, item] of list.entries()) yield* longListFaults(items, item, pointerTo(at, index))
}

function* faultsOfMembers(
  { properties = {} }: SchemaNode,
  record: Record<string, unknown>,
  at: string,
): Generator<Fault> {
  for (const [name, member] of Object.entries(record)) {
    const known = Object.hasOwn(properties, name) ? properties[name] : undefined
    if (known !== undefined) yield* longListFaults(known, member, pointerTo(at, name))
  }
}
