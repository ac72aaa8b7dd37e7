import { type Draft, type Json, valueAt, withValue } from './draft.ts'
import { driversOf, nameOf } from './kinds.ts'

const NAME = /^\/drivers\/(\d+)\/id$/

/** Which driver a pointer names. */
export const namedAt = (pointer: string): number | undefined => {
  const [, index] = NAME.exec(pointer) ?? []
  return index === undefined ? undefined : Number(index)
}

/** The name of a driver and those it had before, the last one first; none that another driver has now. */
export function namesOf(draft: Draft, index: number, past: readonly Draft[]): string[] {
  const count = driversOf(draft).length
  // A driver more or less, and the places before are those of others.
  const from = past.findLastIndex((before) => driversOf(before).length !== count)
  const others = driversOf(draft).map((_, i) => (i === index ? undefined : nameOf(draft, i)))
  const names = [...past.slice(from + 1), draft].map((one) => nameOf(one, index)).reverse()
  return [...new Set(names)].filter((name) => !others.includes(name))
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
