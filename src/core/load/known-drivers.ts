import type { Driver } from '../../schema/driver.ts'
import type { Assumption } from '../../schema/frame.ts'
import type { ComplexCurve } from '../complex-curve.ts'
import { contradictions, knownResistanceOhm } from '../driver/resonance.ts'
import type { DriverPrint } from '../findings/load.ts'
import type { Fault, Refusal } from '../outcome.ts'
import { driverResistanceOhm, resistiveImpedance } from './driver-resistance.ts'
import { isBelievable } from './rated-impedance.ts'

/** Impedance (ohm on the grid) and direct-current resistance (ohm) of each kind of driver. */
export interface KnownDrivers {
  impedances: Map<string, ComplexCurve>
  resistances: Map<string, number>
  assumptions: Assumption[]
}

/** The impedances handed in, and resistances for the kinds that were left out. */
export function impedancesOf(
  drivers: readonly Driver[],
  handedIn: ReadonlyMap<string, ComplexCurve>,
  frequencyHz: Float64Array,
): KnownDrivers | Refusal {
  const impedances = new Map(handedIn)
  const resistances = new Map<string, number>()
  const assumptions: Assumption[] = []
  const faults: Fault[] = []
  drivers.forEach((driver, index) => {
    const parametersAt = `/drivers/${index}/parameters`
    const at = `${parametersAt}/reOhm`
    faults.push(...contradictions(driver.parameters, parametersAt))
    const impedance = handedIn.get(driver.id) ?? resistiveImpedance(driver, frequencyHz)
    if (impedance === undefined) {
      faults.push({ at, message: 'Give reOhm, or ratedImpedanceOhm as printed on the driver.' })
      return
    }
    // The motion of the cone only ever adds to the resistance, so the lowest real part is close to it.
    const resistance = driverResistanceOhm(driver) ?? impedance.re.reduce((a, b) => Math.min(a, b))
    impedances.set(driver.id, impedance)
    resistances.set(driver.id, resistance)
    if (driver.parameters.reOhm === undefined)
      assumptions.push({
        at,
        value: resistance,
        unit: 'ohm',
        why:
          knownResistanceOhm(driver.parameters) === undefined
            ? 'taken from the rated impedance or the impedance curve: 8 ohm reads about 7'
            : 'follows from the other data of the driver',
      })
  })
  return faults.length > 0 ? { faults } : { impedances, resistances, assumptions }
}

/** Rated impedance of each kind that has a believable one printed on it, ohm. */
export const ratedOf = (drivers: readonly Driver[]): Map<string, number> =>
  new Map(
    drivers.flatMap(({ id, parameters }) => {
      const { ratedImpedanceOhm } = parameters
      const reOhm = knownResistanceOhm(parameters)
      return ratedImpedanceOhm === undefined ||
        (reOhm !== undefined && !isBelievable(ratedImpedanceOhm, reOhm))
        ? []
        : [[id, ratedImpedanceOhm] as const]
    }),
  )

/** Print and resistance of each kind of which both are known, for the rules about a driver in the load. */
export const printsOf = (drivers: readonly Driver[]): DriverPrint[] =>
  drivers.flatMap(({ id, parameters }, index) => {
    const { ratedImpedanceOhm } = parameters
    const reOhm = knownResistanceOhm(parameters)
    return reOhm === undefined || ratedImpedanceOhm === undefined
      ? []
      : [{ at: `/drivers/${index}/parameters/ratedImpedanceOhm`, id, reOhm, ratedImpedanceOhm }]
  })
