import { type Circuit, logSpaced } from './circuit.ts'
import type { Loudspeaker } from './loudspeaker.ts'
import { solveLoudspeaker } from './solve-loudspeaker.ts'
import type { LumpedVent } from './vent.ts'

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
function bassOnly(speaker: Loudspeaker): Loudspeaker {
  const { circuit } = speaker
  const vent = circuit.vent
  if (vent === null || vent.kind === 'lumped' || circuit.boxM3PerPa === null)
    return { ...speaker, circuit: { ...circuit, leH: 0 } }
  const w = 2 * Math.PI * speaker.boxHz
  const plug: LumpedVent = {
    kind: 'lumped',
    massKgPerM4: 1 / (w * w * circuit.boxM3PerPa),
    resistanceOhm: vent.resistanceOhm,
    complianceM3PerPa: null,
    areaM2: vent.areaM2,
  }
  return { ...speaker, circuit: { ...circuit, leH: 0, vent: plug } }
}

const centreHz = (speaker: Loudspeaker): number => Math.max(speaker.boxHz, speaker.driver.fsHz)

// Two octaves above its resonances a driver is taken as its mass and its resistance alone.
const MID_BAND = 4

/** Mean driver voltage over channel voltage above the bass; components before the drivers count. */
export function midBandGain(speaker: Loudspeaker): number {
  const { feed, voltageShare } = speaker.group
  if (feed === undefined) return voltageShare
  const { transferRe, transferIm } = feed(
    Float64Array.of(MID_BAND * centreHz(speaker)),
    Float64Array.of(speaker.driver.reOhm),
    Float64Array.of(0),
  )
  return Math.hypot(transferRe[0]!, transferIm[0]!)
}

/** Level of a loudspeaker above its bass for `voltageV` V RMS on the channel, dB at 1 m. */
export const midBandSplDb = (speaker: Loudspeaker, voltageV: number): number =>
  referenceSplDb(speaker.circuit, voltageV * midBandGain(speaker))

const POINTS = 400
// Within one step of the grid: a frequency to a few parts in ten thousand, far below what a box is built to.
const FINE_POINTS = 60
const HALF_POWER_DB = 10 * Math.log10(2)

/**
 * Cut-off frequencies and peak against the mass-controlled level. f3 is the highest frequency at which the response is
 * down to half power towards the bass; likewise f6, f10. Found on the circuit, port as a plug of air, without coil inductance.
 */
export function systemFigures(speaker: Loudspeaker, voltageV: number): SystemFigures {
  const bass = bassOnly(speaker)
  const reference = midBandSplDb(speaker, voltageV)
  const centre = centreHz(speaker)
  // A very damped driver is still rising far above its resonance.
  const top = centre * Math.max(30, 10 / speaker.driver.qts)
  const levels = (fromHz: number, toHz: number, points: number): Levels => {
    const hz = logSpaced(fromHz, toHz, points)
    const { splDb } = solveLoudspeaker(bass, hz, voltageV)
    return { hz, dB: splDb.map((level) => level - reference) }
  }
  const whole = levels(0.02 * centre, top, POINTS)
  // Behind a coil the top end falls as well; there the search begins at the highest point.
  const from = speaker.group.feed === undefined ? POINTS - 1 : highestIndex(whole.dB)
  const down = (dB: number): number | null => {
    const bracket = lastRise(whole, -dB, from)
    if (bracket === null) return null
    const near = levels(whole.hz[bracket]!, whole.hz[bracket + 1]!, FINE_POINTS)
    return interpolated(near, lastRise(near, -dB, FINE_POINTS - 1) ?? 0, -dB)
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
  const { splDb } = solveLoudspeaker(bassOnly(speaker), Float64Array.of(frequencyHz), 1)
  return splDb[0]! - midBandSplDb(speaker, 1)
}

interface Levels {
  hz: Float64Array
  /** Level against the reference, dB. */
  dB: Float64Array
}

/** The last step up to index `from` in which a response rises past a level; null where it never does. */
function lastRise({ dB }: Levels, level: number, from: number): number | null {
  let i = from
  while (i >= 0 && dB[i]! >= level) i--
  return i < 0 || i === from ? null : i
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
