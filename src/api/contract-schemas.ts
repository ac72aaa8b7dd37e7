import type { ContractDocument } from './contract-document.ts'
import type { SchemaNode } from './schema-node.ts'

type Schemas = ContractDocument['components']['schemas']

/** Requests take text for a quantity: for the contract alone, such a field is a number or text. */
export function textAllowed(schema: SchemaNode): SchemaNode {
  const { properties, items, anyOf, type } = schema
  const takesText = schema['x-unit'] !== undefined && type !== undefined
  return {
    ...schema,
    ...(takesText && { type: [...new Set([type, 'string'].flat())] }),
    ...(items && { items: textAllowed(items) }),
    ...(anyOf && { anyOf: anyOf.map(textAllowed) }),
    ...(properties && {
      properties: Object.fromEntries(
        Object.entries(properties).map(([name, member]) => [name, textAllowed(member)]),
      ),
    }),
  }
}

/** The shared schemas that the operations point at, those of request bodies with text allowed. */
export function usedSchemas(paths: ContractDocument['paths'], schemas: Schemas): Schemas {
  const operations = Object.values(paths).flatMap((path) => Object.values(path))
  const asked = pointedAt(
    operations.map(({ requestBody }) => requestBody),
    schemas,
  )
  const used = pointedAt(operations, schemas)
  return Object.fromEntries(
    Object.entries(schemas)
      .filter(([name]) => used.has(name))
      .map(([name, schema]) => [name, asked.has(name) ? textAllowed(schema) : schema]),
  )
}

/** Names of the shared schemas below a part of the document, directly or through others. */
function pointedAt(part: unknown, schemas: Schemas, found = new Set<string>()): Set<string> {
  const text = JSON.stringify(part) ?? ''
  for (const [, name] of text.matchAll(/"#\/components\/schemas\/([^"/]+)"/g)) {
    if (name === undefined || found.has(name)) continue
    found.add(name)
    pointedAt(schemas[name], schemas, found)
  }
  return found
}
