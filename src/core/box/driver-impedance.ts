import type { Resonance } from '../driver/complete.ts'
import { responseOf, solveCircuit } from './circuit.ts'
import { coilImpedance } from './coil.ts'
import type { Loudspeaker } from './loudspeaker.ts'

interface Impedance {
  re: Float64Array
  im: Float64Array
}

/** Impedance of one driver in its box over a grid (> 0, Hz), ohm; the other drivers of the box move along. */
export function impedanceInBox(speaker: Loudspeaker, frequencyHz: Float64Array): Impedance {
  const out = responseOf(frequencyHz.length)
  solveCircuit({ ...speaker.circuit, sourceOhm: 0 }, frequencyHz, 1, out)
  return { re: out.impedanceRe, im: out.impedanceIm }
}

/**
 * Impedance of a driver in free air, or with its own closed back when its data hold with that, ohm over a grid (> 0, Hz):
 * Re, the coil, and the motion Re (Qms/Qes) / (1 + j Qms (f/fs - fs/f)).
 * Source: R. H. Small, J. Audio Eng. Soc. 20, 383 (June 1972), from memory.
 */
export function impedanceInFreeAir(driver: Resonance, frequencyHz: Float64Array): Impedance {
  const { fsHz, qms, qes, reOhm, leMh, leExponent } = driver
  const { re, im } = coilImpedance(leMh * 1e-3, leExponent, frequencyHz)
  const peakOhm = (reOhm * qms) / qes
  for (let i = 0; i < frequencyHz.length; i++) {
    const ratio = frequencyHz[i]! / fsHz
    const detuned = qms * (ratio - 1 / ratio)
    const motionRe = peakOhm / (1 + detuned * detuned)
    re[i] = reOhm + re[i]! + motionRe
    im[i] = im[i]! - motionRe * detuned
  }
  return { re, im }
}
