import type { Resonance } from '../driver/impedance.ts'

/**
 * The two frequencies about a resonance where the impedance is the root of Re times its maximum, Hz.
 * Source: R. H. Small, J. Audio Eng. Soc. 20, 383 (June 1972), from memory: f2 − f1 = fs√r0/Qms, f1 f2 = fs².
 */
export function peakBand({ fHz, qms, qes }: Resonance): { lowerHz: number; upperHz: number } {
  const half = Math.sqrt(1 + qms / qes) / (2 * qms)
  const root = Math.sqrt(1 + half * half)
  return { lowerHz: fHz * (root - half), upperHz: fHz * (root + half) }
}

/** Frequencies evenly over the octaves, both ends included, as a generator can be set: two or three digits. */
export function settings(fromHz: number, toHz: number, count: number): number[] {
  const list = Array.from(
    { length: count },
    (_, i) => fromHz * (toHz / fromHz) ** (i / Math.max(1, count - 1)),
  )
  return [...new Set(list.map((hz) => Number(hz.toPrecision(hz < 1000 ? 3 : 2))))]
}
