import { nextNotAbove, nextNotBelow, R10 } from './preferred-values.ts'

/** A fuse is loaded to this share at most. Makers' derating at 25 °C, from memory. */
const FUSE_LOAD = 0.75
/** Smallest fuse worth fitting here, A. Common practice, no source. */
const SMALLEST_FUSE_A = 0.1
/** Resettable fuse: what it holds at 50 °C over 25 °C, and trip over hold. From memory. */
const HOLD_AT_50_C = 0.8
const TRIP_OVER_HOLD = 2

/** Fuse for a steady current, A: next R10 value of IEC 60127 (from memory) that is loaded to 75 % at most. */
export const fuseA = (steadyCurrentA: number): number =>
  nextNotBelow(Math.max(SMALLEST_FUSE_A, steadyCurrentA / FUSE_LOAD), R10)

/**
 * Fuse that blows before a source of a current limit gives in, A: the R10 value next below the limit (IEC 60127, from
 * memory).
 * @returns null when none that is worth fitting lies below it, or when it would be loaded above 75 %
 */
export function fuseWithinA(limitA: number, steadyCurrentA: number): number | null {
  const fuse = nextNotAbove(limitA, R10)
  return fuse < SMALLEST_FUSE_A || steadyCurrentA > FUSE_LOAD * fuse ? null : fuse
}

/** Resettable fuse for a steady current in a warm box, A. Its own 0.05 to 0.3 ohm counts as lead. From memory. */
export function resettableFuse(steadyCurrentA: number): { leastHoldA: number; tripA: number } {
  const leastHoldA = steadyCurrentA / HOLD_AT_50_C
  return { leastHoldA, tripA: TRIP_OVER_HOLD * leastHoldA }
}
