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

const POINTS = 500
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
  const grid = logSpaced(0.02 * centre, top, POINTS)
  const out = responseOf(POINTS)
  solveCircuit(circuit, grid, driverVoltage, out)
  const one = responseOf(1)
  const at = new Float64Array(1)
  const levelDb = (hz: number): number => {
    at[0] = hz
    solveCircuit(circuit, at, driverVoltage, one)
    return one.splDb[0]! - reference
  }
  const down = (dB: number): number | null => {
    let i = POINTS - 1
    while (i >= 0 && out.splDb[i]! - reference >= -dB) i--
    if (i < 0 || i === POINTS - 1) return null
    return crossing(levelDb, grid[i]!, grid[i + 1]!, -dB)
  }
  const peak = highest(levelDb, grid, out.splDb)
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

function crossing(levelDb: (hz: number) => number, below: number, above: number, level: number): number {
  let low = below
  let high = above
  for (let i = 0; i < 40; i++) {
    const middle = Math.sqrt(low * high)
    if (levelDb(middle) < level) low = middle
    else high = middle
  }
  return Math.sqrt(low * high)
}

function highest(
  levelDb: (hz: number) => number,
  grid: Float64Array,
  spl: Float64Array,
): { hz: number; levelDb: number } {
  let best = 0
  for (let i = 1; i < grid.length; i++) if (spl[i]! > spl[best]!) best = i
  let low = grid[Math.max(0, best - 1)]!
  let high = grid[Math.min(grid.length - 1, best + 1)]!
  for (let i = 0; i < 60; i++) {
    const [a, b] = [low + (high - low) / 3, high - (high - low) / 3]
    if (levelDb(a) < levelDb(b)) low = a
    else high = b
  }
  const hz = (low + high) / 2
  return { hz, levelDb: levelDb(hz) }
}
