import { nearestName } from '../core/nearest-name.ts'

/** One bare value out of an answer, or why there is none. */
export type Picked = { text: string } | { fault: string }

const MOST_NAMES = 20

/**
 * The value at a path of names and list positions joined by dots, as bare text without a line end:
 * a spreadsheet takes a number only when nothing stands around it.
 */
export function pick(answer: unknown, path: string, decimal: 'point' | 'comma' = 'point'): Picked {
  let value = answer
  const passed: string[] = []
  for (const name of path.split('.')) {
    const members = membersOf(value)
    const next = members.get(name)
    if (next === undefined) return { fault: notThere(passed, name, [...members.keys()]) }
    value = next
    passed.push(name)
  }
  return typeof value === 'object' && value !== null
    ? { fault: notOne(passed, [...membersOf(value).keys()]) }
    : { text: bare(value, decimal) }
}

function membersOf(value: unknown): Map<string, unknown> {
  return new Map(typeof value === 'object' && value !== null ? Object.entries(value) : [])
}

function notThere(passed: readonly string[], name: string, known: readonly string[]): string {
  const asked = `"${[...passed, name].join('.')}" is not in the answer`
  if (known.length === 0) return `${asked}; nothing is below "${passed.join('.')}"`
  const nearest = nearestName(name, known)
  const meant = nearest === undefined ? '' : `did you mean "${[...passed, nearest].join('.')}"? `
  return `${asked}; ${meant}There are ${listed(passed, known)}`
}

function notOne(passed: readonly string[], below: readonly string[]): string {
  const path = passed.join('.')
  return below.length === 0
    ? `"${path}" is empty`
    : `"${path}" is not one value; below it are ${listed(passed, below)}`
}

function listed(passed: readonly string[], names: readonly string[]): string {
  const shown = names.slice(0, MOST_NAMES).map((name) => [...passed, name].join('.'))
  return names.length > MOST_NAMES ? `${shown.join(', ')} and so on` : shown.join(', ')
}

function bare(value: unknown, decimal: 'point' | 'comma'): string {
  if (typeof value === 'number') return plainNumber(value, decimal)
  if (typeof value === 'string') return value
  return typeof value === 'boolean' ? String(value) : ''
}

/** Never with an exponent: not every sheet reads 1e-7 as a number. */
function plainNumber(value: number, decimal: 'point' | 'comma'): string {
  const text = String(value)
  const plain = text.includes('e')
    ? value.toLocaleString('en-US', { useGrouping: false, maximumFractionDigits: 20 })
    : text
  return decimal === 'comma' ? plain.replace('.', ',') : plain
}
