import type { TableShape } from '../views/table.ts'
import { hasType, resolved, type SchemaNode } from './schema-node.ts'

/**
 * The tables in an answer, by the names a client asks for them, found in its schema: every list of objects, every
 * list of objects inside those (`panels.holes`), every object of lists (`curves`), and `values`, all single values.
 */
export function tableShapes(answer: SchemaNode): ReadonlyMap<string, TableShape> {
  const members = Object.entries(resolved(answer).properties ?? {})
  const values = members.flatMap(([name, node]) => valuesBelow(node, name))
  return new Map([
    ...members.flatMap(([name, node]) => listsOf(node, name)),
    ...(values.length > 0 ? ([['values', { kind: 'values', values }]] satisfies [string, TableShape][]) : []),
  ])
}

function listsOf(node: SchemaNode, name: string): [string, TableShape][] {
  const schema = present(node)
  const row = rowOf(schema)
  if (row !== undefined) {
    const inner = Object.entries(row).flatMap(([member, below]): [string, TableShape][] => {
      const innerRow = rowOf(present(below))
      if (innerRow === undefined) return []
      return [[`${name}.${member}`, { kind: 'rows', lists: [name, member], columns: columnsOf(innerRow) }]]
    })
    return [[name, { kind: 'rows', lists: [name], columns: columnsOf(row) }], ...inner]
  }
  if (isOfLists(schema))
    return [[name, { kind: 'columns', name, columns: Object.keys(schema.properties ?? {}) }]]
  return []
}

/** The members of the rows, when the schema is a list of objects. */
function rowOf(schema: SchemaNode): SchemaNode['properties'] {
  return hasType(schema, 'array') ? resolved(schema.items ?? {}).properties : undefined
}

function isOfLists({ properties }: SchemaNode): boolean {
  const members = Object.values(properties ?? {})
  return members.length > 0 && members.every((member) => isListOfValues(resolved(member)))
}

const isListOfValues = (schema: SchemaNode): boolean =>
  hasType(schema, 'array') && resolved(schema.items ?? {}).properties === undefined

/** Dotted names of what fits into one cell: single values, and lists of them. */
function columnsOf(row: NonNullable<SchemaNode['properties']>): string[] {
  return Object.entries(row).flatMap(([name, node]) => {
    const schema = present(node)
    if (schema.properties !== undefined)
      return columnsOf(schema.properties).map((below) => `${name}.${below}`)
    return hasType(schema, 'array') && !isListOfValues(schema) ? [] : [name]
  })
}

function valuesBelow(node: SchemaNode, name: string): { name: string; unit: string }[] {
  const schema = present(node)
  if (hasType(schema, 'array')) return []
  if (schema.properties === undefined) return [{ name, unit: schema['x-unit'] ?? '' }]
  return Object.entries(schema.properties).flatMap(([member, below]) =>
    valuesBelow(below, `${name}.${member}`),
  )
}

/** The schema of a value that may be null, without the null. */
function present(node: SchemaNode): SchemaNode {
  const schema = resolved(node)
  const branch = schema.anyOf?.find((alternative) => !hasType(resolved(alternative), 'null'))
  return branch === undefined ? schema : resolved(branch)
}
