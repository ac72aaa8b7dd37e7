import type { DriverParameters } from '../../schema/driver.ts'
import type { Assumption } from '../../schema/frame.ts'
import { REFERENCE_AIR } from '../air.ts'
import type { Fault } from '../outcome.ts'
import { significant } from '../say.ts'

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

/** A driver with every linked parameter known. */
export type CompleteDriver = Record<Linked, number> & { leMh: number; leExponent: number }

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

const LINKED: readonly Linked[] = [
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

type Known = Partial<Record<Linked, number>>

const valuesOf = (known: Known, from: readonly Linked[]): number[] | undefined => {
  const values = from.map((name) => known[name])
  return values.every((value) => value !== undefined) ? values : undefined
}

function spread(known: Known): Known {
  const all: Known = { ...known }
  for (let round = 0; round < LINKED.length; round++)
    for (const relation of RELATIONS) {
      const values = all[relation.gives] === undefined ? valuesOf(all, relation.from) : undefined
      if (values !== undefined) all[relation.gives] = relation.solve(values)
    }
  return all
}

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

/** Given parameters that the other given ones contradict, each once, worst first. */
export function contradictions(parameters: DriverParameters): Contradiction[] {
  const found = COMPARED.flatMap((field) => {
    const given = parameters[field]
    if (given === undefined) return []
    const { [field]: _, ...others } = parameters
    const implied = spread(linkedOf(others))[field]
    if (implied === undefined || !(implied > 0)) return []
    const share = Math.abs(implied / given - 1)
    return share > ROUNDING ? [{ field, given, implied, share }] : []
  })
  return found.sort((a, b) => b.share - a.share)
}

const linkedOf = (parameters: DriverParameters): Known =>
  Object.fromEntries(
    LINKED.flatMap((name) => (parameters[name] === undefined ? [] : [[name, parameters[name]]])),
  )

const DECIDING = ['fsHz', 'qes', 'vasL', 'sdCm2', 'reOhm'] as const

const WAYS = {
  fsHz: 'the free-air resonance decides every box; give fsHz, or mmsG with cmsMmPerN',
  qes: 'the electrical Q decides the shape of the bass; give qes, or qts with qms, or blTm with the mass and reOhm',
  vasL: 'the compliance decides the volume; give vasL, or sdCm2 with mmsG or cmsMmPerN',
  sdCm2:
    'the cone area decides level and excursion; give sdCm2 (the diameter across the cone to the middle of the surround)',
  reOhm: 'the DC resistance decides level and load; give reOhm as a meter reads it',
} satisfies Record<(typeof DECIDING)[number], string>

// A small driver without a measured Qms lies between about 2 and 5: common practice, no source.
const USUAL_QMS = 3

function impossible(parameters: DriverParameters, at: string): Fault[] {
  const { qts, qes, qms } = parameters
  const over = (name: string, limit: number | undefined) =>
    qts !== undefined && limit !== undefined && qts >= limit
      ? [
          {
            at: `${at}/qts`,
            message: `must be below ${name}, ${significant(limit, 3)}: 1/qts = 1/qes + 1/qms`,
          },
        ]
      : []
  return [...over('qes', qes), ...over('qms', qms)]
}

// A parameter that nothing implies is 0 here, and then refused as not positive.
const allOf = (known: Known): Record<Linked, number> => ({
  fsHz: known.fsHz ?? 0,
  qms: known.qms ?? 0,
  qes: known.qes ?? 0,
  qts: known.qts ?? 0,
  vasL: known.vasL ?? 0,
  sdCm2: known.sdCm2 ?? 0,
  reOhm: known.reOhm ?? 0,
  mmsG: known.mmsG ?? 0,
  cmsMmPerN: known.cmsMmPerN ?? 0,
  rmsKgPerS: known.rmsKgPerS ?? 0,
  blTm: known.blTm ?? 0,
})

export type Completion = { driver: CompleteDriver; assumptions: Assumption[] } | { faults: Fault[] }

/**
 * Completes a driver from any sufficient part of its parameters; all results > 0.
 * Refuses with a fault at each deciding parameter that is neither given nor implied, and at unphysical sets.
 * Source: R. H. Small, J. Audio Eng. Soc. 20, 383 (June 1972), from memory; compliance at reference air.
 */
export function completeDriver(parameters: DriverParameters, at: string): Completion {
  const unphysical = impossible(parameters, at)
  if (unphysical.length > 0) return { faults: unphysical }
  const assumptions: Assumption[] = []
  let known = spread(linkedOf(parameters))
  if (known.qms === undefined) {
    assumptions.push({
      at: `${at}/qms`,
      value: USUAL_QMS,
      unit: '',
      why: 'usual for a small driver; common practice, no source',
    })
    known = spread({ ...known, qms: USUAL_QMS })
  }
  const faults = DECIDING.flatMap((field) =>
    known[field] === undefined ? [{ at: `${at}/${field}`, message: WAYS[field] }] : [],
  )
  if (faults.length > 0) return { faults }
  if (parameters.leMh === undefined)
    assumptions.push({
      at: `${at}/leMh`,
      value: 0,
      unit: 'mH',
      why: 'not given; the highest notes come out brighter than in truth',
    })
  const complete = allOf(known)
  const bad = LINKED.filter((name) => !(Number.isFinite(complete[name]) && complete[name] > 0))
  if (bad.length > 0)
    return {
      faults: bad.map((name) => ({
        at: `${at}/${name}`,
        message: 'the other parameters leave no positive value for it',
      })),
    }
  return {
    driver: { ...complete, leMh: parameters.leMh ?? 0, leExponent: parameters.leExponent ?? 1 },
    assumptions,
  }
}
