import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js'
import type { LightMyRequestResponse } from 'fastify'
import type { ContractDocument } from '../../src/api/contract-document.ts'

/** Holds live answers to the contract: an undeclared status or media type is a fault too. */
export function contractChecks(contract: ContractDocument) {
  const ajv = new Ajv2020({ allErrors: true, strict: false })
  ajv.addSchema({ ...contract, $id: 'contract' })
  const compiled = new Map<string, ValidateFunction>()

  const validatorAt = (pointer: string) => {
    const known = compiled.get(pointer) ?? ajv.compile({ $ref: `contract#${pointer}` })
    compiled.set(pointer, known)
    return known
  }

  return (path: string, method: 'get' | 'post', response: LightMyRequestResponse): string[] => {
    const type = String(response.headers['content-type']).split(';')[0] ?? ''
    const declared = contract.paths[path]?.[method]?.responses[response.statusCode]
    // Not modified has neither body nor media type (RFC 9110, section 15.4.5).
    if (declared !== undefined && response.statusCode === 304 && response.body === '') return []
    const media = declared?.content?.[type]
    if (media === undefined) return [`${response.statusCode} ${type} is not in the contract`]
    const place = ['paths', path, method, 'responses', response.statusCode, 'content', type, 'schema']
    const pointer = place
      .map((name) => `/${String(name).replaceAll('~', '~0').replaceAll('/', '~1')}`)
      .join('')
    const validate = validatorAt(encodeURI(pointer))
    validate(type.endsWith('json') ? response.json() : response.body)
    return (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`)
  }
}

/** Every calculation of the contract with its complete example. */
export function examplesOf(contract: ContractDocument) {
  return Object.entries(contract.paths).map(([path, { get, post }]) => ({
    path,
    get,
    example: post?.requestBody?.content['application/json']?.example,
  }))
}
