import type { DriverParameters } from '../../schema/driver.ts'
import type { Assumption } from '../../schema/frame.ts'
import { isRefusal, type Refusal } from '../outcome.ts'
import { coilAssumptions, impliedBy, isPositive, NO_POSITIVE } from './implied.ts'
import { type Known, LINKED, type Linked } from './relations.ts'

/** A driver with every linked parameter known. */
export type CompleteDriver = Record<Linked, number> & { leMh: number; leExponent: number }

const DECIDING = ['fsHz', 'qes', 'vasL', 'sdCm2', 'reOhm'] as const

const WAYS = {
  fsHz: 'the free-air resonance decides every box; give fsHz, or mmsG with cmsMmPerN',
  qes: 'the electrical Q decides the shape of the bass; give qes, or qts with qms, or blTm with the mass and reOhm',
  vasL: 'the compliance decides the volume; give vasL, or sdCm2 with mmsG or cmsMmPerN',
  sdCm2:
    'the cone area decides level and excursion; give sdCm2 (the diameter across the cone to the middle of the surround)',
  reOhm: 'the DC resistance decides level and load; give reOhm as a meter reads it',
} satisfies Record<(typeof DECIDING)[number], string>

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

export type Completion = { driver: CompleteDriver; assumptions: Assumption[] } | Refusal

/**
 * Completes a driver from any sufficient part of its parameters; all results > 0.
 * Refuses with a fault at each deciding parameter that is neither given nor implied, and at unphysical sets.
 * Source: R. H. Small, J. Audio Eng. Soc. 20, 383 (June 1972), from memory; compliance at reference air.
 */
export function completeDriver(parameters: DriverParameters, at: string): Completion {
  const implied = impliedBy(parameters, at)
  if (isRefusal(implied)) return implied
  const { known, assumptions } = implied
  const missing = DECIDING.filter((field) => known[field] === undefined)
  if (missing.length > 0)
    return { faults: missing.map((field) => ({ at: `${at}/${field}`, message: WAYS[field] })) }
  const complete = allOf(known)
  const bad = LINKED.filter((name) => !isPositive(complete[name]))
  if (bad.length > 0)
    return {
      faults: bad.map((name) => ({
        at: `${at}/${name}`,
        message: NO_POSITIVE,
      })),
    }
  return {
    driver: { ...complete, leMh: parameters.leMh ?? 0, leExponent: parameters.leExponent ?? 1 },
    assumptions: [...assumptions, ...coilAssumptions(parameters, at)],
  }
}
