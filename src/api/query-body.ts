import type { Fault } from '../core/outcome.ts'
import { type DecimalMark, withDecimalPoint } from '../core/quantity.ts'
import { hasType, meantBranch, pointerTo, resolved, type SchemaNode } from './schema-node.ts'

/** A query as the server parses it: a name that comes several times holds a list. */
export type Query = Record<string, string | string[]>

/** Dotted names as a tree: the texts given at a name, and the names below it. */
interface Branch {
  texts: string[]
  below: Map<string, Branch>
}

/** How the texts are read, and the faults found on the way. */
interface Reading {
  decimal: DecimalMark
  faults: Fault[]
}

const DEEPEST = 16
const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/

/**
 * The nested body that dotted names of a query stand for: `driver.fsHz=128&drivers.0.id=main`.
 * The schema says what is a list, a number or true/false; `none` and `null` are null where null is allowed; a name
 * without a value counts as not given, as an empty field of a form does. Quantities stay text for the reader of texts.
 */
export function queryBody(
  schema: SchemaNode,
  query: Query,
  decimal: DecimalMark = 'point',
): { body: unknown; faults: Fault[] } {
  const faults: Fault[] = []
  const root: Branch = { texts: [], below: new Map() }
  for (const [name, given] of Object.entries(query)) {
    const texts = [given].flat().filter((text) => text !== '')
    const path = name.split('.')
    if (path.length > DEEPEST)
      faults.push({ at: pointerTo('', name.slice(0, 60)), message: 'has too many dots' })
    else if (texts.length > 0) branchAt(root, path).texts.push(...texts)
  }
  return { body: grown(schema, root, '', { decimal, faults }) ?? {}, faults }
}

function branchAt(root: Branch, path: readonly string[]): Branch {
  return path.reduce((branch, name) => {
    const next = branch.below.get(name) ?? { texts: [], below: new Map() }
    branch.below.set(name, next)
    return next
  }, root)
}

function grown(node: SchemaNode, branch: Branch, at: string, reading: Reading): unknown {
  const schema = meant(resolved(node), branch)
  if (branch.texts.length > 0 && branch.below.size > 0) {
    reading.faults.push({ at, message: 'is given both as one value and by the names below it' })
    return undefined
  }
  if (hasType(schema, 'array')) return grownList(schema.items ?? {}, branch, at, reading)
  if (branch.texts.length === 0) return grownObject(schema, branch, at, reading)
  if (branch.texts.length > 1) reading.faults.push({ at, message: `is given ${branch.texts.length} times` })
  return branch.texts.length === 1 ? leaf(schema, branch.texts[0] ?? '', reading) : undefined
}

function grownList(items: SchemaNode, branch: Branch, at: string, reading: Reading): unknown[] {
  if (branch.below.size === 0)
    return branch.texts.map((text) => leaf(meantText(resolved(items)), text, reading))
  return Array.from({ length: branch.below.size }, (_, index) => {
    const item = branch.below.get(String(index))
    if (item !== undefined) return grown(items, item, pointerTo(at, index), reading)
    reading.faults.push({
      at,
      message: `is a list: its items are counted 0, 1, 2 without gaps, and ${index} is missing`,
    })
    return undefined
  })
}

/** Built by `fromEntries`, which makes plain members of names like `__proto__`; the validator then refuses them. */
function grownObject(schema: SchemaNode, branch: Branch, at: string, reading: Reading): unknown {
  const known = schema.properties ?? {}
  const members = [...branch.below].map(([name, below]) => {
    const member = Object.hasOwn(known, name) ? known[name] : undefined
    return [name, grown(member ?? {}, below, pointerTo(at, name), reading)]
  })
  return Object.fromEntries(members)
}

function leaf(schema: SchemaNode, text: string, { decimal }: Reading): unknown {
  if (hasType(schema, 'null') && (text === 'none' || text === 'null')) return null
  if (hasType(schema, 'boolean') && (text === 'true' || text === 'false')) return text === 'true'
  const isPlainNumber =
    schema['x-unit'] === undefined && (hasType(schema, 'number') || hasType(schema, 'integer'))
  const number = decimal === 'comma' ? withDecimalPoint(text) : text
  return isPlainNumber && NUMBER.test(number) ? Number(number) : text
}

function meant(schema: SchemaNode, branch: Branch): SchemaNode {
  if (schema.anyOf === undefined) return schema
  const value = branch.texts.length > 0 ? ({ text: true } as const) : { names: [...branch.below.keys()] }
  return resolved(meantBranch(schema.anyOf, value) ?? {})
}

const meantText = (schema: SchemaNode): SchemaNode =>
  schema.anyOf === undefined ? schema : resolved(meantBranch(schema.anyOf, { text: true }) ?? {})
