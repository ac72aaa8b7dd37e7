import type { DriverParameters } from '../../schema/driver.ts'
import type { Assumption } from '../../schema/frame.ts'
import type { Fault } from '../outcome.ts'
import { significant } from '../say.ts'
import { type Known, LINKED, type Linked, linkedOf, spread } from './relations.ts'

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

// A small driver without a measured Qms lies between about 2 and 5: common practice, no source.
export const USUAL_QMS = 3

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
  const exponent =
    parameters.leExponent !== undefined && parameters.leMh === undefined
      ? [{ at: `${at}/leExponent`, message: 'says how leMh grows with frequency; give leMh as well' }]
      : []
  return [...over('qes', qes), ...over('qms', qms), ...exponent]
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
