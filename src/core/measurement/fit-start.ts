import { type Peak, peaksOf } from './peak.ts'
import type { MeasuredSweep } from './sweep.ts'
import type { Sought } from './unknowns.ts'

/** The sweeps of one driver; null for those that were not taken. */
export interface DriverSweeps {
  freeAir: MeasuredSweep
  withMass: MeasuredSweep | null
  inBox: MeasuredSweep | null
}

/** Resistance to begin with: the meter, or the lowest impedance, which lies a little above it. */
export function firstResistance(sweep: MeasuredSweep, leadOhm: number, meterOhm: number | null): number {
  const lowest = sweep.ohm.reduce((least, value) => Math.min(least, value), Number.POSITIVE_INFINITY)
  return meterOhm ?? Math.max(0.06, 0.97 * lowest - leadOhm)
}

/** Where neither flank of a peak is in the sweep: usual for a small driver, common practice, no source. */
const USUAL_QMS = 3

/**
 * Q of a peak by the hand formulas: r0 = Zmax/Re, Qms = fs√r0/(f2 − f1), Qes = Qms/(r0 − 1).
 * One flank does for two, as the curve is even on a logarithmic axis.
 * Source: R. H. Small, J. Audio Eng. Soc. 20, 383 (June 1972), from memory.
 */
export function handQ(peak: Peak, reOhm: number): { qms: number; qes: number } {
  const r0 = Math.max(1.01, peak.maximumOhm / reOhm)
  const { fHz, lowerHz, upperHz } = peak
  const lower = lowerHz ?? (upperHz === null ? null : (fHz * fHz) / upperHz)
  const upper = upperHz ?? (lower === null ? null : (fHz * fHz) / lower)
  const qms =
    lower === null || upper === null || upper <= lower ? USUAL_QMS : (fHz * Math.sqrt(r0)) / (upper - lower)
  return { qms, qes: qms / (r0 - 1) }
}

/** Inductance that the highest reading leaves over the resistance, H; a little where it leaves none. */
function firstInductance({ frequencyHz, ohm }: MeasuredSweep, reOhm: number): number {
  const last = ohm.length - 1
  const reactance = Math.sqrt(Math.max((0.05 * reOhm) ** 2, ohm[last]! ** 2 - reOhm ** 2))
  return reactance / (2 * Math.PI * frequencyHz[last]!)
}

/** Where fits may begin, one for each peak of the free-air sweep; none where a sweep shows no peak. */
export function startOf(sweeps: DriverSweeps, leadOhm: number, meterOhm: number | null): Sought[] {
  const re = firstResistance(sweeps.freeAir, leadOhm, meterOhm)
  const le = firstInductance(sweeps.freeAir, re)
  const peaks = peaksOf(sweeps.freeAir, re + leadOhm)
  const [massPeak] = sweeps.withMass === null ? [] : peaksOf(sweeps.withMass, re + leadOhm)
  const [boxPeak] = sweeps.inBox === null ? [] : peaksOf(sweeps.inBox, re + leadOhm)
  const lacking =
    (sweeps.withMass !== null && massPeak === undefined) || (sweeps.inBox !== null && boxPeak === undefined)
  if (lacking) return []
  return peaks.map((peak) => ({
    re,
    le,
    exponent: 1,
    fs: peak.fHz,
    ...handQ(peak, re),
    mass: massPeak === undefined ? 1 : Math.max(0.02, (peak.fHz / massPeak.fHz) ** 2 - 1),
    massQms: massPeak === undefined ? 1 : handQ(massPeak, re).qms,
    stiffness: boxPeak === undefined ? 1 : Math.max(0.02, (boxPeak.fHz / peak.fHz) ** 2 - 1),
    boxMass: 1,
    boxQms: boxPeak === undefined ? 1 : handQ(boxPeak, re).qms,
  }))
}

/** Coarse steps leave the top of a peak open by some percent either way. */
const NUDGES = [
  [0.94, 0.94],
  [0.94, 1],
  [0.94, 1.06],
  [1, 0.94],
  [1, 1.06],
  [1.06, 0.94],
  [1.06, 1],
  [1.06, 1.06],
] as const

/** Other places to begin where the first ones led nowhere: every resonance a little lower and higher. */
export const nudged = (start: Sought): Sought[] =>
  NUDGES.map(([ofFree, ofSecond]) => ({
    ...start,
    fs: start.fs * ofFree,
    mass: start.mass * ofSecond ** 2,
    stiffness: start.stiffness * ofSecond ** 2,
  }))
