import { nearestName } from '../core/nearest-name.ts'
import type { DecimalMark } from '../core/quantity.ts'
import { plainNumber } from './table.ts'

/** One bare value out of an answer, or why there is none: a value that does not exist, or a path that leads to none. */
export type Picked = { text: string } | { noValue: string } | { fault: string; known: string }

const MOST_NAMES = 20
const MOST_NEAR = 3

/**
 * The value at a path of names and list positions joined by dots, as bare text without a line end:
 * a spreadsheet takes a number only when nothing stands around it.
 */
export function pick(answer: unknown, path: string, decimal: DecimalMark = 'point'): Picked {
  let value = answer
  const passed: string[] = []
  for (const name of path.split('.')) {
    const members = membersOf(value)
    const next = members.get(name)
    if (next === undefined) return notThere(passed, name, [...members.keys()])
    value = next
    passed.push(name)
  }
  if (value === null) return { noValue: `"${path}" has no value here` }
  return typeof value === 'object'
    ? notOne(passed, [...membersOf(value).keys()])
    : { text: bare(value, decimal) }
}

function membersOf(value: unknown): Map<string, unknown> {
  return new Map(typeof value === 'object' && value !== null ? Object.entries(value) : [])
}

function notThere(passed: readonly string[], name: string, known: readonly string[]): Picked {
  const asked = `"${[...passed, name].join('.')}" is not in the answer`
  if (known.length === 0) return { fault: `${asked}; nothing is below "${passed.join('.')}"`, known: '' }
  const near = nearestNames(name, known)
  const meant = near.length === 0 ? '' : `; did you mean ${quoted(passed, near)}?`
  return { fault: `${asked}${meant}`, known: `There are ${listed(passed, known)}` }
}

function notOne(passed: readonly string[], below: readonly string[]): Picked {
  const path = passed.join('.')
  if (below.length === 0) return { fault: `"${path}" is empty`, known: '' }
  const such = quoted(passed, below.slice(0, MOST_NEAR))
  return {
    fault: `"${path}" is not one value; pick one below it, such as ${such}`,
    known: `Below it are ${listed(passed, below)}`,
  }
}

function nearestNames(written: string, known: readonly string[]): string[] {
  const near: string[] = []
  while (near.length < MOST_NEAR) {
    const next = nearestName(
      written,
      known.filter((name) => !near.includes(name)),
    )
    if (next === undefined) break
    near.push(next)
  }
  return near
}

const quoted = (passed: readonly string[], names: readonly string[]): string =>
  names.map((name) => `"${[...passed, name].join('.')}"`).join(' or ')

function listed(passed: readonly string[], names: readonly string[]): string {
  const shown = names.slice(0, MOST_NAMES).map((name) => [...passed, name].join('.'))
  return names.length > MOST_NAMES ? `${shown.join(', ')} and so on` : shown.join(', ')
}

function bare(value: unknown, decimal: DecimalMark): string {
  if (typeof value === 'number') return plainNumber(value, decimal)
  if (typeof value === 'string') return value
  return typeof value === 'boolean' ? String(value) : ''
}
