import type { Driver } from '../../schema/driver.ts'
import type { ComplexCurve } from '../complex-curve.ts'
import { knownResistanceOhm } from '../driver/resonance.ts'

/**
 * Direct-current resistance of a voice coil over its rated impedance: 0.70 to 0.92, so that 8 ohm reads about 7.
 * Common practice, no source.
 */
export const DC_SHARE_OF_RATED = 0.875

/**
 * Direct-current resistance of a driver, ohm, as a meter reads it: measured, implied by its other data, or estimated
 * from the rated impedance.
 * @returns undefined when there is none of these
 */
export function driverResistanceOhm({ parameters }: Driver): number | undefined {
  const { ratedImpedanceOhm } = parameters
  const estimate = ratedImpedanceOhm === undefined ? undefined : DC_SHARE_OF_RATED * ratedImpedanceOhm
  return knownResistanceOhm(parameters) ?? estimate
}

/**
 * Impedance of a driver of which only a resistance is known, ohm on a grid of `points`: the resistance alone, with
 * the voice-coil inductance when that is given. Lower than the truth near resonance, never higher than the truth
 * between resonance and the rise of the coil.
 * @returns undefined when its data tell no resistance
 */
export function resistiveImpedance(driver: Driver, frequencyHz: Float64Array): ComplexCurve | undefined {
  const resistance = driverResistanceOhm(driver)
  if (resistance === undefined) return undefined
  const inductance = (driver.parameters.leMh ?? 0) * 1e-3
  return {
    re: new Float64Array(frequencyHz.length).fill(resistance),
    im: frequencyHz.map((frequency) => 2 * Math.PI * frequency * inductance),
  }
}
