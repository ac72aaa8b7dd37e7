import { type Circuit, logSpaced, responseOf, solveCircuit } from './circuit.ts'
import type { Loudspeaker } from './loudspeaker.ts'

/** What sums up a bass response; a frequency is null where the response never falls that far. */
export interface SystemFigures {
  referenceSplDb: number
  f3Hz: number | null
  f6Hz: number | null
  f10Hz: number | null
  peakDb: number
  peakHz: number | null
}

/**
 * Level of the driver where its mass alone governs, for `driverVoltage` V RMS at each of `count` drivers, dB re 20 µPa at 1 m.
 * Source: R. H. Small, J. Audio Eng. Soc. 20, 383 (June 1972), from memory.
 */
export function referenceSplDb(circuit: Circuit, driverVoltage: number): number {
  const { count, sdM2, blTm, mmsKg, reOhm, sourceOhm, air, solidAngle } = circuit
  const pressure =
    (air.densityKgPerM3 * count * sdM2 * blTm * driverVoltage) / (solidAngle * mmsKg * (reOhm + sourceOhm))
  return 20 * Math.log10(pressure / 20e-6)
}

/** The same loudspeaker with its port as one plug of air and without coil inductance: the bass alone. */
function bassOnly(speaker: Loudspeaker): Circuit {
  const { circuit } = speaker
  const vent = circuit.vent
  if (vent === null || vent.kind === 'lumped' || circuit.boxM3PerPa === null) return { ...circuit, leH: 0 }
  const w = 2 * Math.PI * speaker.boxHz
  return {
    ...circuit,
    leH: 0,
    vent: {
      kind: 'lumped',
      massKgPerM4: 1 / (w * w * circuit.boxM3PerPa),
      resistanceOhm: vent.resistanceOhm,
      complianceM3PerPa: null,
      areaM2: vent.areaM2,
    },
  }
}

const POINTS = 400
// Within one step of the grid: a frequency to a few parts in ten thousand, far below what a box is built to.
const FINE_POINTS = 60
const HALF_POWER_DB = 10 * Math.log10(2)

/**
 * Cut-off frequencies and peak against the mass-controlled level. f3 is the highest frequency at which the response is
 * down to half power towards the bass; likewise f6, f10. Found on the circuit, port as a plug of air, without coil inductance.
 */
export function systemFigures(speaker: Loudspeaker, driverVoltage: number): SystemFigures {
  const circuit = bassOnly(speaker)
  const reference = referenceSplDb(circuit, driverVoltage)
  const centre = Math.max(speaker.boxHz, speaker.driver.fsHz)
  // A very damped driver is still rising far above its resonance.
  const top = centre * Math.max(30, 10 / speaker.driver.qts)
  const levels = (fromHz: number, toHz: number, points: number): Levels => {
    const hz = logSpaced(fromHz, toHz, points)
    const out = responseOf(points)
    solveCircuit(circuit, hz, driverVoltage, out)
    return { hz, dB: out.splDb.map((level) => level - reference) }
  }
  const whole = levels(0.02 * centre, top, POINTS)
  const down = (dB: number): number | null => {
    const bracket = lastRise(whole, -dB)
    if (bracket === null) return null
    const near = levels(whole.hz[bracket]!, whole.hz[bracket + 1]!, FINE_POINTS)
    return interpolated(near, lastRise(near, -dB) ?? 0, -dB)
  }
  const peak = peakOf(whole, levels)
  // The tail of a response without a peak ends a hair below or above the reference by rounding.
  const hasPeak = peak.levelDb > 1e-3
  return {
    referenceSplDb: reference,
    f3Hz: down(HALF_POWER_DB),
    f6Hz: down(6),
    f10Hz: down(10),
    peakDb: hasPeak ? peak.levelDb : 0,
    peakHz: hasPeak ? peak.hz : null,
  }
}

/** Level of the bass at one frequency against the mass-controlled level, dB. */
export function relativeLevelDb(speaker: Loudspeaker, frequencyHz: number): number {
  const circuit = bassOnly(speaker)
  const out = responseOf(1)
  solveCircuit(circuit, Float64Array.of(frequencyHz), 1, out)
  return out.splDb[0]! - referenceSplDb(circuit, 1)
}

interface Levels {
  hz: Float64Array
  /** Level against the reference, dB. */
  dB: Float64Array
}

/** The last step of a rising response that passes a level; null where it never does. */
function lastRise({ dB }: Levels, level: number): number | null {
  let i = dB.length - 1
  while (i >= 0 && dB[i]! >= level) i--
  return i < 0 || i === dB.length - 1 ? null : i
}

/** Where a level lies within step `i`, straight between the two points. */
function interpolated({ hz, dB }: Levels, i: number, level: number): number {
  const share = (level - dB[i]!) / (dB[i + 1]! - dB[i]!)
  return hz[i]! + share * (hz[i + 1]! - hz[i]!)
}

function highestIndex(dB: Float64Array): number {
  let best = 0
  for (let i = 1; i < dB.length; i++) if (dB[i]! > dB[best]!) best = i
  return best
}

function peakOf(
  whole: Levels,
  levels: (fromHz: number, toHz: number, points: number) => Levels,
): { hz: number; levelDb: number } {
  const best = highestIndex(whole.dB)
  const last = whole.hz.length - 1
  const near = levels(whole.hz[Math.max(0, best - 1)]!, whole.hz[Math.min(last, best + 1)]!, FINE_POINTS)
  const top = highestIndex(near.dB)
  return { hz: near.hz[top]!, levelDb: near.dB[top]! }
}
