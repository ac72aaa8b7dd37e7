import { coilImpedance } from '../box/coil.ts'

/** What stands still in a driver, and the leads to it. */
export interface Coil {
  reOhm: number
  /** Equivalent inductance at 1 kHz, H, and how it grows; see `coilImpedance`. */
  leH: number
  exponent: number
  leadOhm: number
}

/** A resonance as the terminals show it. */
export interface Resonance {
  fHz: number
  qms: number
  qes: number
}

/**
 * Impedance of a driver near its resonance and above, ohm: leads + Re + coil + Re (Qms/Qes)/(1 + jQms(f/f0 − f0/f)).
 * Source: R. H. Small, J. Audio Eng. Soc. 20, 383 (June 1972), from memory; coil: W. M. Leach 2002, see `coilImpedance`.
 */
export function driverImpedance(
  { reOhm, leH, exponent, leadOhm }: Coil,
  { fHz, qms, qes }: Resonance,
  frequencyHz: Float64Array,
): { re: Float64Array; im: Float64Array } {
  const { re, im } = coilImpedance(leH, exponent, frequencyHz)
  const peak = (reOhm * qms) / qes
  const still = reOhm + leadOhm
  for (let i = 0; i < frequencyHz.length; i++) {
    const detuned = qms * (frequencyHz[i]! / fHz - fHz / frequencyHz[i]!)
    const share = peak / (1 + detuned * detuned)
    re[i] = re[i]! + still + share
    im[i] = im[i]! - share * detuned
  }
  return { re, im }
}
