import { Ajv } from 'ajv'
import { expect } from 'vitest'
import { sharedSchemas } from '../../../src/schema/shared.ts'

/** Holds sections against the schemas that the contract shows of them: nothing missing, nothing unknown. */
export function expectConforms(sections: object, schemas: Record<string, object>): void {
  const ajv = new Ajv({ strict: false, allErrors: true, schemas: sharedSchemas() })
  const validate = ajv.compile({
    type: 'object',
    properties: schemas,
    required: Object.keys(schemas),
    additionalProperties: false,
  })
  validate(sections)
  expect(validate.errors ?? []).toEqual([])
}
