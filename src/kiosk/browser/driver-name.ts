import { type Draft, type Json, valueAt, withValue } from './draft.ts'
import { driversOf, nameOf } from './kinds.ts'

const NAME = /^\/drivers\/(\d+)\/id$/

/** Which driver a pointer names. */
export const namedAt = (pointer: string): number | undefined => {
  const [, index] = NAME.exec(pointer) ?? []
  return index === undefined ? undefined : Number(index)
}

/**
 * The design with another name for a driver, in its wiring too. `before` is the design before the first letter was
 * typed: halfway the name may be that of another driver, and then their places could not be told apart any more.
 */
export function renamed(draft: Draft, before: Draft, index: number, name: Json | undefined): Draft {
  const called = withValue(draft, `/drivers/${index}/id`, name)
  const [old, next] = [nameOf(before, index), nameOf(called, index)]
  const isTaken = driversOf(called).some((_, i) => i !== index && nameOf(called, i) === next)
  const wiring = valueAt(before, '/wiring')
  if (wiring === undefined) return called
  return withValue(called, '/wiring', isTaken ? wiring : wiredAs(wiring, old, next))
}

function wiredAs(wiring: Json, old: string, next: string): Json {
  if (wiring === old) return next
  if (typeof wiring !== 'object' || wiring === null) return wiring
  const entries: [string, Json][] = Object.entries(wiring)
  const changed = entries.map(([name, member]): [string, Json] => [name, wiredAs(member, old, next)])
  return Array.isArray(wiring) ? changed.map(([, member]) => member) : Object.fromEntries(changed)
}
