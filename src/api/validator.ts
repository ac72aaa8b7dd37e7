import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js'
import type { Static, TSchema } from 'typebox'
import { sharedSchemas } from '../schema/shared.ts'

const ajv = new Ajv2020({
  allErrors: true,
  coerceTypes: false,
  removeAdditional: false,
  useDefaults: false,
  verbose: true,
  allowUnionTypes: true,
  keywords: ['x-unit', 'x-unit-items'],
})

const known = new Set<TSchema>()

/** A check that tells every fault and changes nothing. */
export function validatorOf<S extends TSchema>(schema: S): ValidateFunction<Static<S>> {
  for (const shared of sharedSchemas()) {
    if (!known.has(shared)) ajv.addSchema({ ...shared })
    known.add(shared)
  }
  return ajv.compile<Static<S>>('$id' in schema ? { $ref: `${schema.$id}#` } : { ...schema })
}
