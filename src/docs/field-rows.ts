import type { ContractDocument } from '../api/contract-document.ts'
import type { SchemaNode } from '../api/schema-node.ts'

/** A field as the documentation lists it. */
export interface FieldRow {
  name: string
  takes: string
  required: boolean
  description: string
}

const DEEPEST = 8

/** Every field below a schema of the contract, by its dotted name; `[]` marks a list. */
export function fieldRows(contract: ContractDocument, schema: SchemaNode): FieldRow[] {
  const rows = (node: SchemaNode, prefix: string, depth: number): FieldRow[] => {
    const shape = target(contract, node)
    const inner = shape.items === undefined ? shape : target(contract, shape.items)
    const mark = shape.items === undefined || prefix === '' ? '' : '[]'
    return Object.entries(inner.properties ?? {}).flatMap(([member, field]) => {
      const name = prefix === '' ? member : `${prefix}${mark}.${member}`
      const required = (inner.required ?? []).includes(member)
      const below = depth < DEEPEST ? rows(field, name, depth + 1) : []
      return [rowOf(target(contract, field), name, required), ...below]
    })
  }
  return rows(schema, '', 0)
}

function rowOf(schema: SchemaNode, name: string, required: boolean): FieldRow {
  return { name, required, takes: takesSaid(schema), description: schema.description ?? '' }
}

/** What a field takes, in words: its unit, its choices, or its type. */
export function takesSaid(schema: SchemaNode): string {
  if (schema.enum !== undefined) return schema.enum.join(', ')
  const types = [schema.type ?? 'any shape named below'].flat().join(' or ')
  const unit = schema['x-unit']
  return unit === undefined ? types : `${types}, ${unit}`
}

function target(contract: ContractDocument, node: SchemaNode): SchemaNode {
  const name = node.$ref?.split('/').at(-1)
  return name === undefined ? node : (contract.components.schemas[name] ?? node)
}
