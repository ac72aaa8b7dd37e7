import { impedanceExtremes } from '../box/impedance-extremes.ts'
import { medianOf } from '../measurement/median.ts'
import type { MeasuredSweep } from '../measurement/sweep.ts'
import { plannedImpedance } from './curves.ts'
import type { PlannedBox } from './planned-box.ts'
import type { Slip } from './slips.ts'
import type { TurningPoint } from './turning-points.ts'

/** What a sweep shows of the resonances, before anything is fitted. */
export interface Coverage {
  /** The curve rises to its first peak and falls after its last one. */
  showsPeaks: boolean
  /** Readings about the peaks, from half the lowest to twice the highest. */
  readings: number
  /** Range that a repeated sweep should have, Hz. */
  wantedFromHz: number
  wantedToHz: number
  /** Measured over planned impedance, the middle of all readings. */
  levelRatio: number
  /** Readings that were left out before anything else was looked at. */
  slips: readonly Slip[]
}

/** Fewer readings leave nothing to judge ten sought figures by. Common practice, no source. */
export const FEWEST_READINGS = 12

/** A flank of a peak goes down to this share of it. Common practice, no source. */
const FLANK = 0.8

/** A peak further off the planned resonance than this ratio belongs to something else. Common practice, no source. */
const NEARNESS = 5

function isWhole({ frequencyHz, ohm }: MeasuredSweep, turns: readonly TurningPoint[]): boolean {
  const peaks = turns.filter(({ kind }) => kind === 'peak')
  const [first, last] = [peaks[0], peaks.at(-1)]
  if (first === undefined || last === undefined) return false
  const readings = Array.from(ohm, (value, i) => ({ value, hz: frequencyHz[i]! }))
  const below = readings.filter(({ hz }) => hz < first.hz).map(({ value }) => value)
  const above = readings.filter(({ hz }) => hz > last.hz).map(({ value }) => value)
  const lowestBelow = Math.min(...below)
  // A sweep that starts between two peaks falls first.
  const startsFalling = below.length > 0 && below[0]! > lowestBelow / FLANK
  return !startsFalling && lowestBelow < FLANK * first.ohm && Math.min(...above) < FLANK * last.ohm
}

/** Holds a sweep against what it must show: the peaks of the plan, or those it has itself. Common practice, no source. */
export function coverageOf(
  planned: PlannedBox,
  curve: MeasuredSweep,
  turns: readonly TurningPoint[],
  leadOhm: number,
  slips: readonly Slip[],
): Coverage {
  const { frequencyHz, ohm } = curve
  const { speaker } = planned
  const near = ({ hz }: { hz: number }) => hz > speaker.boxHz / NEARNESS && hz < speaker.boxHz * NEARNESS
  const wanted = impedanceExtremes(speaker).peaks.filter(near)
  const shown = turns.filter((turn) => turn.kind === 'peak' && near(turn))
  const meant = [speaker.boxHz, ...wanted.map(({ hz }) => hz)]
  const all = [...meant, ...shown.map(({ hz }) => hz)]
  const [lowest, highest] = [Math.min(...all), Math.max(...all)]
  const [firstHz, lastHz] = [frequencyHz[0] ?? 0, frequencyHz.at(-1) ?? 0]
  // One peak only is a fault of the box if the sweep went where the other should be.
  const reaches = firstHz < FLANK * Math.min(...meant) && lastHz > Math.max(...meant) / FLANK
  const isComplete = speaker.opening === null || shown.length > 1 || reaches
  const plan = plannedImpedance(planned, frequencyHz, leadOhm)
  return {
    showsPeaks: shown.length > 0 && isComplete && isWhole(curve, turns),
    readings: frequencyHz.filter((value) => value > lowest / 2 && value < 2 * highest).length,
    wantedFromHz: lowest / 3,
    wantedToHz: highest * 4,
    levelRatio: medianOf(ohm.map((value, i) => value / Math.hypot(plan.re[i]!, plan.im[i]!))),
    slips,
  }
}
