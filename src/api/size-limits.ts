import type { Fault } from '../core/outcome.ts'
import { pointerTo } from './schema-node.ts'

export const BODY_LIMIT_BYTES = 256 * 1024
const DEEPEST = 32
const MOST_VALUES = 20_000

/** The fault of a body nested too deep or holding too many values; looked for before anything else walks it. */
export function sizeFault(body: unknown): Fault | undefined {
  const left = { values: MOST_VALUES }
  const tooDeep = tooDeepIn(body, 0, left)
  if (left.values < 0) return { at: '', message: `holds more than ${MOST_VALUES} values` }
  return tooDeep === undefined ? undefined : { at: tooDeep, message: `lies deeper than ${DEEPEST} levels` }
}

/** Where a value lies too deep, or the walk ended for want of values; told on the way back, for nearly no body has it. */
function tooDeepIn(value: unknown, depth: number, left: { values: number }): string | undefined {
  left.values -= 1
  if (left.values < 0 || depth > DEEPEST) return ''
  if (typeof value !== 'object' || value === null) return undefined
  for (const [name, member] of Object.entries(value)) {
    const within = tooDeepIn(member, depth + 1, left)
    if (within !== undefined) return `${pointerTo('', name)}${within}`
  }
  return undefined
}
