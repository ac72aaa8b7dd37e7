import type { DriverParameters } from '../../schema/driver.ts'
import type { Assumption } from '../../schema/frame.ts'
import { type Fault, isRefusal, type Refusal } from '../outcome.ts'
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

export type Completion = { driver: CompleteDriver; assumptions: Assumption[] } | Refusal

/** All that the parameters imply, with a usual Qms where none is; refuses what contradicts. */
function impliedBy(
  parameters: DriverParameters,
  at: string,
): { known: Known; assumptions: Assumption[] } | Refusal {
  const unphysical = impossible(parameters, at)
  if (unphysical.length > 0) return { faults: unphysical }
  const known = spread(linkedOf(parameters))
  if (known.qms !== undefined) return { known, assumptions: [] }
  const usual = {
    at: `${at}/qms`,
    value: USUAL_QMS,
    unit: '',
    why: 'usual for a small driver; common practice, no source',
  }
  return { known: spread({ ...known, qms: USUAL_QMS }), assumptions: [usual] }
}

const coilOf = ({ leMh = 0, leExponent = 1 }: DriverParameters) => ({ leMh, leExponent })

const coilAssumptions = ({ leMh }: DriverParameters, at: string): Assumption[] =>
  leMh === undefined
    ? [
        {
          at: `${at}/leMh`,
          value: 0,
          unit: 'mH',
          why: 'not given; the highest notes come out brighter than in truth',
        },
      ]
    : []

const NO_POSITIVE = 'the other parameters leave no positive value for it'

const isPositive = (value: number | undefined): value is number =>
  value !== undefined && Number.isFinite(value) && value > 0

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
    driver: { ...complete, ...coilOf(parameters) },
    assumptions: [...assumptions, ...coilAssumptions(parameters, at)],
  }
}

/** Parameters that decide the impedance of a driver by itself. */
const RESONANT = ['fsHz', 'qms', 'qes', 'reOhm'] as const

/** What contradicts in the parameters that a driver's impedance follows from; nothing is wrong with those left out. */
export function contradictions(parameters: DriverParameters, at: string): Fault[] {
  const implied = impliedBy(parameters, at)
  if (isRefusal(implied)) return implied.faults
  const { known } = implied
  return RESONANT.filter((name) => known[name] !== undefined && !isPositive(known[name])).map((name) => ({
    at: `${at}/${name}`,
    message: NO_POSITIVE,
  }))
}

/** Resistance of the coil as it is given or as the other parameters imply it, ohm; undefined when neither. */
export function knownResistanceOhm(parameters: DriverParameters): number | undefined {
  const reOhm = parameters.reOhm ?? spread(linkedOf(parameters)).reOhm
  return isPositive(reOhm) ? reOhm : undefined
}

/** What the impedance of a driver by itself follows from: neither its compliance nor its cone. */
export type Resonance = Pick<CompleteDriver, 'fsHz' | 'qms' | 'qes' | 'reOhm' | 'leMh' | 'leExponent'>

/** The resonance of a driver from any sufficient part of its parameters; undefined when they do not tell it. */
export function resonanceOf(
  parameters: DriverParameters,
  at: string,
): { resonance: Resonance; assumptions: Assumption[] } | undefined {
  const implied = impliedBy(parameters, at)
  if (isRefusal(implied)) return undefined
  const { fsHz, qms, qes, reOhm } = implied.known
  if (!isPositive(fsHz) || !isPositive(qms) || !isPositive(qes) || !isPositive(reOhm)) return undefined
  return {
    resonance: { fsHz, qms, qes, reOhm, ...coilOf(parameters) },
    assumptions: [...implied.assumptions, ...coilAssumptions(parameters, at)],
  }
}
