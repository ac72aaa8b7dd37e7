import type { Driver } from '../../schema/driver.ts'
import type { ComplexCurve } from '../complex-curve.ts'
import { driverImpedance } from '../driver/impedance.ts'
import { resonanceOf } from '../driver/resonance.ts'
import { resistiveImpedance } from '../load/driver-resistance.ts'

/**
 * Impedance of a driver outside the air of the box on a grid: with its resonance where its data tell it, else its resistance
 * alone; undefined when not even that is given.
 */
export function ownImpedance(driver: Driver, frequencyHz: Float64Array): ComplexCurve | undefined {
  const known = resonanceOf(driver.parameters, '')
  return known === undefined
    ? resistiveImpedance(driver, frequencyHz)
    : driverImpedance(known.coil, known.resonance, frequencyHz)
}

/** The same for several drivers; those of which nothing is known are left out. */
export function ownImpedances(
  drivers: readonly Driver[],
  frequencyHz: Float64Array,
): Map<string, ComplexCurve> {
  return new Map(
    drivers.flatMap((driver) => {
      const impedance = ownImpedance(driver, frequencyHz)
      return impedance === undefined ? [] : [[driver.id, impedance] as const]
    }),
  )
}
