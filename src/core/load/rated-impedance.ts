import type { Wiring } from '../../schema/wiring.ts'
import { meterReadingOhm } from './direct-current.ts'
import { partsOf } from './wiring-parts.ts'

/** A load may dip to this share of its rated impedance. IEC 60268-5:2003, 16.1, from memory. */
export const LOWEST_SHARE_OF_RATED = 0.8

/** Rated impedances that drivers are sold with, ohm. Common practice, no source. */
const USUAL_RATED_OHM = [1, 1.5, 2, 3, 4, 5, 6, 8, 10, 12, 16, 32]

/** Floating point must not push a value over its limit. */
const DUST = 1e-9

/**
 * Lowest impedance modulus a load of this rated impedance may have, ohm.
 * Source: IEC 60268-5:2003, 16.1 (80 % rule), from memory.
 */
export const lowestOfRatedOhm = (ratedOhm: number): number => LOWEST_SHARE_OF_RATED * ratedOhm

/** Whether a load that dips to `minimumOhm` may hang on an amplifier for loads rated `ratedOhm` and more. Same source. */
export const mayDrive = (minimumOhm: number, ratedOhm: number): boolean =>
  minimumOhm >= lowestOfRatedOhm(ratedOhm) * (1 - DUST)

/**
 * Rated impedance from a measured minimum, ohm: the largest usual value whose 80 % is not above the minimum; beyond
 * the usual values the limit itself.
 * Source: IEC 60268-5:2003, 16.1 (80 % rule), from memory.
 */
export function ratedFromMinimumOhm(minimumOhm: number, usual: readonly number[] = USUAL_RATED_OHM): number {
  const limit = minimumOhm / LOWEST_SHARE_OF_RATED
  const fitting = usual.filter((value) => value <= limit * (1 + DUST))
  const largest = Math.max(...usual)
  // Above the list the next usual values are far apart, and below it there is nothing to round to.
  return fitting.length === 0 || limit > 1.25 * largest ? limit : Math.max(...fitting)
}

/** Resistance of a voice coil over its rated impedance: 0.70 to 0.92, with room for a sloppy print. Common practice. */
const RESISTANCE_OVER_RATED = { least: 0.6, most: 1 } as const

/** Lowest and highest direct-current resistance that a print of this rated impedance is believed with, ohm. */
export const believableResistanceOhm = (ratedOhm: number): { leastOhm: number; mostOhm: number } => ({
  leastOhm: RESISTANCE_OVER_RATED.least * ratedOhm,
  mostOhm: RESISTANCE_OVER_RATED.most * ratedOhm,
})

/** Whether the print on a driver can be true of a voice coil of this direct-current resistance, ohm. */
export function isBelievable(ratedOhm: number, reOhm: number): boolean {
  const { leastOhm, mostOhm } = believableResistanceOhm(ratedOhm)
  return reOhm >= leastOhm * (1 - DUST) && reOhm <= mostOhm * (1 + DUST)
}

/**
 * Rated impedance of a load, ohm: the printed values combined, unless the load dips below 80 % of that or a value is
 * missing; then what the minimum permits.
 * Source: IEC 60268-5:2003, 16.1 (80 % rule), from memory.
 */
export function ratedLoadOhm(
  wiring: Wiring,
  ratedOhm: ReadonlyMap<string, number>,
  minimumOhm: number,
): number {
  const composed = composedRatedOhm(wiring, ratedOhm)
  return composed !== null && mayDrive(minimumOhm, composed) ? composed : ratedFromMinimumOhm(minimumOhm)
}

/**
 * Rated impedance of a wiring of drivers and resistors, ohm, by combining the rated values.
 * @returns null when a driver has no rated impedance, or when a coil or capacitor makes the sum meaningless
 * Source: Kirchhoff's laws.
 */
export function composedRatedOhm(wiring: Wiring, ratedOhm: ReadonlyMap<string, number>): number | null {
  const composable = partsOf(wiring).every(({ part }) =>
    typeof part === 'string' ? ratedOhm.has(part) : 'resistorOhm' in part,
  )
  return composable ? meterReadingOhm(wiring, ratedOhm) : null
}
