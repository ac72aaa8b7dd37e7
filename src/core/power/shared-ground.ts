import { NEGLIGIBLE_OHM } from './cable.ts'

/** What a shared supply does to the signal. */
export interface GroundError {
  errorV: number
  errorDb: number
  shareInShield: number
}

/** Usual resistance of the shield of an audio lead, ohm, and of a supply ground of which nothing is known. Common practice, no source. */
export const USUAL_SHIELD_OHM = 0.15
export const USUAL_SUPPLY_GROUND_OHM = 0.1

/** The ground half of a supply lead, ohm. */
export const supplyGroundOhm = (loopOhm: number): number =>
  loopOhm > NEGLIGIBLE_OHM ? loopOhm / 2 : USUAL_SUPPLY_GROUND_OHM

/**
 * Error voltage when the audio source and the amplifier hang on one supply: the return current divides between the
 * supply ground and the audio shield, and its drop stands in series with the signal.
 * Source: derived, Verr = I (Rg ∥ Rs).
 */
export function sharedGroundError(
  supplyCurrentA: number,
  supplyGroundOhm: number,
  audioShieldOhm: number,
  sourceLevelV: number,
): GroundError {
  const errorV = (supplyCurrentA * supplyGroundOhm * audioShieldOhm) / (supplyGroundOhm + audioShieldOhm)
  return {
    errorV,
    errorDb: 20 * Math.log10(errorV / sourceLevelV),
    shareInShield: supplyGroundOhm / (supplyGroundOhm + audioShieldOhm),
  }
}
