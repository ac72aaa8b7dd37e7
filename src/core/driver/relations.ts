import type { DriverParameters } from '../../schema/driver.ts'
import { REFERENCE_AIR } from '../air.ts'

/** The parameters that belong together by definition, in the units of the contract. */
export type Linked =
  | 'fsHz'
  | 'qms'
  | 'qes'
  | 'qts'
  | 'vasL'
  | 'sdCm2'
  | 'reOhm'
  | 'mmsG'
  | 'cmsMmPerN'
  | 'rmsKgPerS'
  | 'blTm'

interface Relation {
  gives: Linked
  from: readonly Linked[]
  solve: (v: readonly number[]) => number
}

const BULK_MODULUS_PA = REFERENCE_AIR.densityKgPerM3 * REFERENCE_AIR.speedMPerS ** 2
const TWO_PI = 2 * Math.PI
// Vas in litres, Sd in cm², Cms in mm/N: Vas = ρc² Sd² Cms, with 1e-8 · 1e-3 · 1e3 for the units.
const VAS = BULK_MODULUS_PA * 1e-8

// Each row solves one definition for one member. Source: R. H. Small, J. Audio Eng. Soc. 20, 383 (June 1972), from memory.
const RELATIONS: readonly Relation[] = [
  { gives: 'qts', from: ['qes', 'qms'], solve: ([e, m]) => (e! * m!) / (e! + m!) },
  { gives: 'qes', from: ['qts', 'qms'], solve: ([t, m]) => (t! * m!) / (m! - t!) },
  { gives: 'qms', from: ['qts', 'qes'], solve: ([t, e]) => (t! * e!) / (e! - t!) },
  { gives: 'vasL', from: ['sdCm2', 'cmsMmPerN'], solve: ([s, c]) => VAS * s! * s! * c! },
  { gives: 'cmsMmPerN', from: ['vasL', 'sdCm2'], solve: ([v, s]) => v! / (VAS * s! * s!) },
  { gives: 'sdCm2', from: ['vasL', 'cmsMmPerN'], solve: ([v, c]) => Math.sqrt(v! / (VAS * c!)) },
  { gives: 'fsHz', from: ['mmsG', 'cmsMmPerN'], solve: ([m, c]) => 1 / (TWO_PI * Math.sqrt(m! * c! * 1e-6)) },
  { gives: 'mmsG', from: ['fsHz', 'cmsMmPerN'], solve: ([f, c]) => 1e6 / ((TWO_PI * f!) ** 2 * c!) },
  { gives: 'cmsMmPerN', from: ['fsHz', 'mmsG'], solve: ([f, m]) => 1e6 / ((TWO_PI * f!) ** 2 * m!) },
  { gives: 'rmsKgPerS', from: ['fsHz', 'mmsG', 'qms'], solve: ([f, m, q]) => (TWO_PI * f! * m! * 1e-3) / q! },
  { gives: 'qms', from: ['fsHz', 'mmsG', 'rmsKgPerS'], solve: ([f, m, r]) => (TWO_PI * f! * m! * 1e-3) / r! },
  {
    gives: 'blTm',
    from: ['fsHz', 'mmsG', 'reOhm', 'qes'],
    solve: ([f, m, r, q]) => Math.sqrt((TWO_PI * f! * m! * 1e-3 * r!) / q!),
  },
  {
    gives: 'qes',
    from: ['fsHz', 'mmsG', 'reOhm', 'blTm'],
    solve: ([f, m, r, b]) => (TWO_PI * f! * m! * 1e-3 * r!) / (b! * b!),
  },
  {
    gives: 'reOhm',
    from: ['fsHz', 'mmsG', 'qes', 'blTm'],
    solve: ([f, m, q, b]) => (b! * b! * q!) / (TWO_PI * f! * m! * 1e-3),
  },
]

export const LINKED: readonly Linked[] = [
  'fsHz',
  'qms',
  'qes',
  'qts',
  'vasL',
  'sdCm2',
  'reOhm',
  'mmsG',
  'cmsMmPerN',
  'rmsKgPerS',
  'blTm',
]

/** What is known so far. */
export type Known = Partial<Record<Linked, number>>

const valuesOf = (known: Known, from: readonly Linked[]): number[] | undefined =>
  from.some((name) => known[name] === undefined) ? undefined : from.map((name) => known[name]!)

/** Fills in everything that the known parameters imply. */
export function spread(known: Known): Known {
  const all: Known = { ...known }
  // What one round fills in may imply more; after a round that fills in nothing there is no more.
  for (let isMore = true; isMore; ) {
    isMore = false
    for (const { gives, from, solve } of RELATIONS) {
      const values = all[gives] === undefined ? valuesOf(all, from) : undefined
      if (values === undefined) continue
      all[gives] = solve(values)
      isMore = true
    }
  }
  return all
}

/** The linked parameters of a request. */
export function linkedOf(parameters: DriverParameters): Known {
  const linked: Known = {}
  for (const name of LINKED) if (parameters[name] !== undefined) linked[name] = parameters[name]
  return linked
}
