import type { Fault } from '../core/outcome.ts'
import { pointerTo } from './schema-node.ts'

export const BODY_LIMIT_BYTES = 256 * 1024
const DEEPEST = 32
const MOST_VALUES = 20_000

/** The fault of a body nested too deep or holding too many values; looked for before anything else walks it. */
export function sizeFault(body: unknown): Fault | undefined {
  let left = MOST_VALUES
  const faultIn = (value: unknown, at: string, depth: number): Fault | undefined => {
    left -= 1
    if (left < 0) return { at: '', message: `holds more than ${MOST_VALUES} values` }
    if (depth > DEEPEST) return { at, message: `lies deeper than ${DEEPEST} levels` }
    if (typeof value !== 'object' || value === null) return undefined
    for (const [name, member] of Object.entries(value)) {
      const fault = faultIn(member, pointerTo(at, name), depth + 1)
      if (fault !== undefined) return fault
    }
    return undefined
  }
  return faultIn(body, '', 0)
}
