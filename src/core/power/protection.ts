import { nextNotAbove, nextNotBelow, R10 } from './preferred-values.ts'

/** A fuse is loaded to this share at most. Makers' derating at 25 °C, from memory. */
const FUSE_LOAD = 0.75
/** A slow fuse carries its rated current for good and blows at about this many times it. IEC 60127, from memory. */
const BLOWS_AT = 2.1
/** Smallest fuse worth fitting here, A. Common practice, no source. */
const SMALLEST_FUSE_A = 0.1

/** Fuse for a steady current, A: next R10 value of IEC 60127 (from memory) that is loaded to 75 % at most. */
export const fuseA = (steadyCurrentA: number): number =>
  nextNotBelow(Math.max(SMALLEST_FUSE_A, steadyCurrentA / FUSE_LOAD), R10)

/**
 * Fuse that blows before a source of a current limit gives in, A: the highest R10 value that the limit blows
 * (IEC 60127, from memory).
 * @returns null when none that is worth fitting lies below it, or when it would be loaded above 75 %
 */
export function fuseWithinA(limitA: number, steadyCurrentA: number): number | null {
  const fuse = nextNotAbove(limitA / BLOWS_AT, R10)
  return fuse < SMALLEST_FUSE_A || steadyCurrentA > FUSE_LOAD * fuse ? null : fuse
}

/** Direct-current ratings switches are sold with, A. Common practice, no source. */
const SWITCH_RATINGS_A = [0.5, 1, 2, 3, 5, 6, 10, 16, 20, 25, 32, 50, 63, 100]

/** Rating of a switch for a steady current, A: the next usual one not below, or the current itself beyond them. */
export const switchA = (steadyCurrentA: number): number =>
  SWITCH_RATINGS_A.find((rating) => rating >= steadyCurrentA) ?? steadyCurrentA
