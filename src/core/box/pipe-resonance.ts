import type { AirState } from '../air.ts'

/** A lossless tube on a box: lengths in mm, area in cm², volume in litres, all > 0. */
export interface PipeOnBox {
  lengthMm: number
  outerEndMm: number
  innerEndMm: number
  totalAreaCm2: number
  netVolumeL: number
}

/**
 * Reactance at the inner end of a tube whose ends are point masses, Pa·s/m³.
 * Source: plane-wave transmission line; L. L. Beranek & T. Mellow, Acoustics (2012), from memory.
 */
export function pipeReactance(pipe: PipeOnBox, air: AirState, frequencyHz: number): number {
  const w = 2 * Math.PI * frequencyHz
  const k = w / air.speedMPerS
  const area = pipe.totalAreaCm2 * 1e-4
  const zc = (air.densityKgPerM3 * air.speedMPerS) / area
  const massEnd = (lengthMm: number) => (w * air.densityKgPerM3 * lengthMm * 1e-3) / area
  const tangent = Math.tan(k * pipe.lengthMm * 1e-3)
  const load = massEnd(pipe.outerEndMm)
  return massEnd(pipe.innerEndMm) + (zc * (load + zc * tangent)) / (zc - load * tangent)
}

/**
 * First resonance of the tube as a pipe, Hz: the peak of the flow through it above the tuning.
 * Source: root of reactance of pipe and box compliance near half a wavelength, c/(2L'); derived.
 */
export function firstPipeResonanceHz(pipe: PipeOnBox, air: AirState): number {
  const compliance = (pipe.netVolumeL * 1e-3) / (air.densityKgPerM3 * air.speedMPerS ** 2)
  const halfWave = (500 * air.speedMPerS) / (pipe.lengthMm + pipe.outerEndMm + pipe.innerEndMm)
  const excess = (f: number) => pipeReactance(pipe, air, f) * 2 * Math.PI * f * compliance - 1
  let low = 0.6 * halfWave
  let high = 1.4 * halfWave
  // Short fat tubes have no half wave of their own below the bracket's end; the estimate then has to do.
  if (excess(low) > 0 || excess(high) < 0) return halfWave
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2
    if (excess(middle) > 0) high = middle
    else low = middle
  }
  return (low + high) / 2
}
