import type { Wiring } from '../../schema/wiring.ts'
import { meterReadingOhm } from './direct-current.ts'
import { partsOf } from './wiring-parts.ts'

/** A load may dip to this share of its rated impedance. IEC 60268-5:2003, 16.1, from memory. */
export const LOWEST_SHARE_OF_RATED = 0.8

/** Rated impedances that drivers are sold with, ohm. Common practice, no source. */
const USUAL_RATED_OHM = [1, 1.5, 2, 3, 4, 5, 6, 8, 10, 12, 16, 32]

/**
 * Lowest impedance modulus a load of this rated impedance may have, ohm.
 * Source: IEC 60268-5:2003, 16.1 (80 % rule), from memory.
 */
export const lowestOfRatedOhm = (ratedOhm: number): number => LOWEST_SHARE_OF_RATED * ratedOhm

/**
 * Rated impedance from a measured minimum, ohm: the largest usual value whose 80 % is not above the minimum; beyond
 * the usual values the limit itself.
 * Source: IEC 60268-5:2003, 16.1 (80 % rule), from memory.
 */
export function ratedFromMinimumOhm(minimumOhm: number, usual: readonly number[] = USUAL_RATED_OHM): number {
  const limit = minimumOhm / LOWEST_SHARE_OF_RATED
  const fitting = usual.filter((value) => value <= limit * (1 + 1e-9))
  const largest = Math.max(...usual)
  // Above the list the next usual values are far apart, and below it there is nothing to round to.
  return fitting.length === 0 || limit > 1.25 * largest ? limit : Math.max(...fitting)
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
