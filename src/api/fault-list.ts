import type { ErrorObject } from 'ajv/dist/2020.js'
import type { Fault } from '../core/outcome.ts'
import { sayFault } from './say-fault.ts'
import { isRecord, meantBranch, pointerTo, type SchemaNode } from './schema-node.ts'

export const MOST_FAULTS = 100

/**
 * The faults to tell: those of the text and those of the validator, one a field, in the order of their pointers.
 * Where a text was no quantity, the validator's complaint about the same field is left out.
 */
export function faultList(textFaults: readonly Fault[], errors: readonly ErrorObject[]): Fault[] {
  const unsaid = new Map<string, () => string>()
  for (const fault of textFaults) unsaid.set(fault.at, () => fault.message)
  const choices = choicesByPlace(errors)
  for (const error of errors) {
    const choice = choices.get(error.instancePath)
    const at = placeOf(error)
    if (isMeant(error, choice) && !unsaid.has(at)) unsaid.set(at, () => sayFault(error, shapesOf(choice)))
  }
  const places = [...unsaid.keys()].sort()
  const told = places.slice(0, MOST_FAULTS).map((at) => ({ at, message: unsaid.get(at)?.() ?? '' }))
  const more = places.length - told.length
  return more === 0 ? told : [...told, { at: '', message: `and ${more} more faults` }]
}

/** The first choice between shapes that fails at each place; a long list of wrong items has thousands of places. */
function choicesByPlace(errors: readonly ErrorObject[]): Map<string, ErrorObject> {
  const choices = new Map<string, ErrorObject>()
  for (const error of errors) {
    if (error.keyword === 'anyOf' && !choices.has(error.instancePath)) choices.set(error.instancePath, error)
  }
  return choices
}

/** The field itself, also when it is missing or unknown. */
function placeOf({ instancePath, params }: ErrorObject): string {
  const { missingProperty, additionalProperty } = params
  const name: unknown = missingProperty ?? additionalProperty
  return typeof name === 'string' ? pointerTo(instancePath, name) : instancePath
}

/** Of a choice between shapes, only the faults of the shape that was meant; one fault when none was. */
function isMeant(error: ErrorObject, choice: ErrorObject | undefined): boolean {
  if (choice === undefined) return true
  const shape = meantBy(choice)
  return shape === undefined ? error === choice : error.parentSchema === shape
}

const shapesOf = (choice: ErrorObject | undefined): SchemaNode[] =>
  Array.isArray(choice?.schema) ? choice.schema : []

function meantBy(choice: ErrorObject): SchemaNode | undefined {
  if (typeof choice.data === 'string') return meantBranch(shapesOf(choice), { text: true })
  return isRecord(choice.data)
    ? meantBranch(shapesOf(choice), { names: Object.keys(choice.data) })
    : undefined
}
