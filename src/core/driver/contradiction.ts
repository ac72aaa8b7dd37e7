import type { DriverParameters } from '../../schema/driver.ts'
import { LINKED, type Linked, linkedOf, spread } from './relations.ts'

/** What a set of given parameters says about one of them by another route. */
export interface Contradiction {
  field: Linked
  given: number
  implied: number
  /** Share by which they differ, above the 3% that rounding on data sheets explains (common practice, no source). */
  share: number
}

const ROUNDING = 0.03

// Solving total Q for one of its parts multiplies rounding; a contradiction shows in the total itself.
const COMPARED = LINKED.filter((name) => name !== 'qes' && name !== 'qms')

function contradictionsOf(parameters: DriverParameters): Contradiction[] {
  return COMPARED.flatMap((field) => {
    const given = parameters[field]
    if (given === undefined) return []
    const implied = spread(linkedOf(without(parameters, field)))[field]
    if (implied === undefined || !(implied > 0)) return []
    const share = Math.abs(implied / given - 1)
    return share > ROUNDING ? [{ field, given, implied, share }] : []
  })
}

function without(parameters: DriverParameters, field: Linked): DriverParameters {
  const { [field]: _, ...others } = parameters
  return others
}

// What is derived on most data sheets is likelier to be the slip than what is measured.
const LIKELY_SLIPS: readonly Linked[] = [
  'qts',
  'rmsKgPerS',
  'blTm',
  'cmsMmPerN',
  'mmsG',
  'vasL',
  'sdCm2',
  'reOhm',
  'fsHz',
]

/**
 * The given parameter that best explains why the set contradicts itself, with what the others ask for; null when they
 * agree. It is one without which the rest agree, the likeliest slip first, else the one furthest off.
 */
export function contradiction(parameters: DriverParameters): Contradiction | null {
  const found = contradictionsOf(parameters)
  const alone = LIKELY_SLIPS.find(
    (field) =>
      found.some((row) => row.field === field) && contradictionsOf(without(parameters, field)).length === 0,
  )
  const furthest = [...found].sort((a, b) => b.share - a.share)[0] ?? null
  return found.find((row) => row.field === alone) ?? furthest
}
