import { type Static, type TSchema, Type } from 'typebox'

const registry = new Map<string, TSchema>()

/** Names a schema so that the contract shows it once under `components/schemas`. */
export function share<S extends TSchema>(name: string, schema: S): S {
  const named = { ...schema, $id: name } as S
  registry.set(name, named)
  return named
}

/** Points at a shared schema; validation, text reading and the contract follow the pointer. */
export function ref<S extends TSchema>(schema: S) {
  const name = (schema as { $id?: string }).$id
  if (name === undefined) throw new Error('only a shared schema can be pointed at')
  return Type.Unsafe<Static<S>>({ $ref: `${name}#` })
}

export const sharedSchemas = (): TSchema[] => [...registry.values()]
export const sharedSchema = (name: string): TSchema | undefined => registry.get(name)
