import type { DriverParameters } from '../../schema/driver.ts'
import type { Assumption } from '../../schema/frame.ts'
import { type Fault, isRefusal } from '../outcome.ts'
import type { Coil, Resonance } from './impedance.ts'
import { coilAssumptions, impliedBy, isPositive, NO_POSITIVE } from './implied.ts'
import { linkedOf, spread } from './relations.ts'

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

/**
 * What the impedance of a driver by itself follows from, neither its compliance nor its cone; from any sufficient part
 * of its parameters, undefined when they do not tell it.
 */
export function resonanceOf(
  parameters: DriverParameters,
  at: string,
): { coil: Coil; resonance: Resonance; assumptions: Assumption[] } | undefined {
  const implied = impliedBy(parameters, at)
  if (isRefusal(implied)) return undefined
  const { fsHz, qms, qes, reOhm } = implied.known
  if (!isPositive(fsHz) || !isPositive(qms) || !isPositive(qes) || !isPositive(reOhm)) return undefined
  const { leMh = 0, leExponent = 1 } = parameters
  return {
    coil: { reOhm, leH: leMh * 1e-3, exponent: leExponent, leadOhm: 0 },
    resonance: { fHz: fsHz, qms, qes },
    assumptions: [...implied.assumptions, ...coilAssumptions(parameters, at)],
  }
}
