import { besselJ1 } from './bessel.ts'

/**
 * x = ka sin θ at which the level off the axis has fallen to half power, to half pressure, and to nothing first.
 * Source: roots of 2 J1(x)/x = 1/√2, 1/2 and 0, found numerically; the last is A&S (1964), table 9.5.
 */
export const FALL_X = {
  minus3Db: 1.61633995,
  minus6Db: 2.21508937,
  firstNull: 3.83170597,
} as const

export type Fall = keyof typeof FALL_X

/** ka up to which a paper cone moves as a whole. Common practice, no source. */
const BREAK_UP_KA = 2

// Deeper than 140 dB no level is real, and at zero it would not be a number.
const SILENT = 1e-7

/**
 * Level of an amplitude over its reference, dB; null in a null, that is more than 140 dB down.
 * Definition of the decibel; the floor is common practice, no source.
 */
export const amplitudeDb = (amplitude: number): number | null =>
  Math.abs(amplitude) < SILENT ? null : 20 * Math.log10(Math.abs(amplitude))

/** Sine of an angle off the axis given in degrees, 0 (on the axis) to 90 (along the baffle). Definition. */
export const sineOf = (angleDeg: number): number => Math.sin((angleDeg * Math.PI) / 180)

/**
 * x = ka sin θ, which alone decides the directivity of a piston: radius in m, frequency in Hz (both ≥ 0),
 * angle off the axis in degrees (0 to 90), speed of sound in m/s.
 * Source: L. L. Beranek, Acoustics (1954), from memory.
 */
export const pistonX = (radiusM: number, frequencyHz: number, angleDeg: number, speedMPerS: number): number =>
  ((2 * Math.PI * frequencyHz * radiusM) / speedMPerS) * sineOf(angleDeg)

/**
 * Level off the axis over that on it, dB, for a piston in a plane baffle at x = ka sin θ (0 to 500): 0 at x = 0,
 * null in a null. Holds while the cone moves as a whole.
 * Source: L. L. Beranek, Acoustics (1954): 20 log |2 J1(x)/x|, from memory.
 */
export const pistonLevelDb = (x: number): number | null => (x === 0 ? 0 : amplitudeDb((2 * besselJ1(x)) / x))

/**
 * Lowest frequency, Hz, at which the level at an angle off the axis (degrees, 0 to 90) has fallen so far; radius
 * in m (> 0), speed of sound in m/s. Null on the axis, where it never falls. Source: at `FALL_X` and `pistonX`.
 */
export function fallFrequencyHz(
  fall: Fall,
  radiusM: number,
  angleDeg: number,
  speedMPerS: number,
): number | null {
  const sine = sineOf(angleDeg)
  return sine === 0 ? null : (FALL_X[fall] * speedMPerS) / (2 * Math.PI * radiusM * sine)
}

/**
 * Frequency, Hz, where ka = 2: above about it a paper cone breaks up and the piston no longer describes it.
 * Radius in m (> 0), speed of sound in m/s. Common practice, no source.
 */
export const breakUpFrequencyHz = (radiusM: number, speedMPerS: number): number =>
  (BREAK_UP_KA * speedMPerS) / (2 * Math.PI * radiusM)
