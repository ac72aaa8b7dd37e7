import type { Fault } from '../core/outcome.ts'

export const BODY_LIMIT_BYTES = 256 * 1024
const DEEPEST = 32
const MOST_VALUES = 20_000

/** The fault of a body nested too deep or holding too many values; looked for before anything else walks it. */
export function sizeFault(body: unknown): Fault | undefined {
  let left = MOST_VALUES
  const fits = (value: unknown, depth: number): boolean => {
    left -= 1
    if (depth > DEEPEST || left < 0) return false
    if (typeof value !== 'object' || value === null) return true
    return Object.values(value).every((member) => fits(member, depth + 1))
  }
  if (fits(body, 0)) return undefined
  const message =
    left < 0 ? `holds more than ${MOST_VALUES} values` : `is nested deeper than ${DEEPEST} levels`
  return { at: '', message }
}
