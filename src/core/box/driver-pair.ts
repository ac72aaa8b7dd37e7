import { amplitudeDb, sineOf } from './directivity.ts'

/** Two equal drivers fed alike: distance of their centres (m, > 0) and the speed of sound (m/s). */
export interface DriverPair {
  spacingM: number
  speedMPerS: number
}

const kdOf = (pair: DriverPair, frequencyHz: number): number =>
  (2 * Math.PI * frequencyHz * pair.spacingM) / pair.speedMPerS

/**
 * Power the pair radiates over what the two would alone, at a frequency in Hz (≥ 0): 2 (3 dB) where the spacing is
 * small against the wavelength, about 1 where it is large. Small sources in one baffle.
 * Source: 1 + sin(kd)/(kd), R. L. Pritchard, J. Acoust. Soc. Am. 32, 730 (1960), from memory.
 */
export function pairPowerOverTwoAlone(pair: DriverPair, frequencyHz: number): number {
  const kd = kdOf(pair, frequencyHz)
  return kd === 0 ? 2 : 1 + Math.sin(kd) / kd
}

/**
 * Far level of the pair over one driver, dB, at an angle off the axis (degrees, 0 to 90) in the plane through both:
 * 6.02 on the axis, null in a null. Each driver counts as a point.
 * Source: two equal sources, 20 log |2 cos((kd/2) sin θ)|; derived.
 */
export const pairLevelDb = (pair: DriverPair, frequencyHz: number, angleDeg: number): number | null =>
  amplitudeDb(2 * Math.cos((kdOf(pair, frequencyHz) / 2) * sineOf(angleDeg)))

/**
 * Lowest frequency, Hz, at which the two cancel at an angle off the axis (degrees, 0 to 90) in the plane through
 * both; null on the axis, where they never do. Source: half a wavelength of path, f = c/(2 d sin θ); derived.
 */
export function pairNullHz(pair: DriverPair, angleDeg: number): number | null {
  const sine = sineOf(angleDeg)
  return sine === 0 ? null : pair.speedMPerS / (2 * pair.spacingM * sine)
}

/**
 * Frequency, Hz, below which the pair has no null in any direction: the one along their line.
 * Source: c/(2d), the case θ = 90°; derived.
 */
export const lowestPairNullHz = (pair: DriverPair): number => pair.speedMPerS / (2 * pair.spacingM)
