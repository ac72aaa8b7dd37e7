import type { Unit } from '../schema/quantity.ts'
import { sharedSchema } from '../schema/shared.ts'

/** The part of JSON Schema that our schemas use, as the readers of requests see it. */
export interface SchemaNode {
  $ref?: string
  type?: string | readonly string[]
  description?: string
  examples?: readonly unknown[]
  enum?: readonly unknown[]
  properties?: Record<string, SchemaNode>
  required?: readonly string[] | undefined
  items?: SchemaNode
  maxItems?: number
  anyOf?: readonly SchemaNode[]
  'x-unit'?: Unit
}

/** The schema itself, where it is only pointed at. */
export function resolved(node: SchemaNode): SchemaNode {
  if (node.$ref === undefined) return node
  const name = node.$ref.replace(/#$/, '')
  const target: SchemaNode | undefined = sharedSchema(name)
  if (target === undefined) throw new Error(`no schema is shared under the name ${name}`)
  return resolved(target)
}

export function hasType(node: SchemaNode, type: string): boolean {
  return typeof node.type === 'string' ? node.type === type : (node.type ?? []).includes(type)
}

/** The alternative a value was meant to be: text for text, an object by the names in it. */
export function meantBranch(
  anyOf: readonly SchemaNode[],
  value: { text: true } | { names: readonly string[] },
): SchemaNode | undefined {
  if ('text' in value) return anyOf.find((branch) => hasType(resolved(branch), 'string'))
  return anyOf.find((branch) => {
    const known = resolved(branch).properties ?? {}
    return value.names.some((name) => Object.hasOwn(known, name))
  })
}

/** JSON Pointer to a member (RFC 6901, Bryan, Zyp and Nottingham, 2013). */
export const pointerTo = (parent: string, name: string | number): string =>
  `${parent}/${String(name).replaceAll('~', '~0').replaceAll('/', '~1')}`

export const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)
