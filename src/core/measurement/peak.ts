import { medianOf } from './median.ts'
import type { MeasuredSweep } from './sweep.ts'

/** A resonance as the eye finds it on the curve: where a fit begins, and what the hand formulas take. */
export interface Peak {
  fHz: number
  maximumOhm: number
  /** Where the curve is at the root of Re times the maximum, either side; null beyond the sweep. */
  lowerHz: number | null
  upperHz: number | null
  /** Maximum over the higher of the two feet, above 1. */
  height: number
  /** Readings between `lowerHz` and `upperHz`. */
  readings: number
}

/** A rise that noise alone does not make. Common practice, no source. */
const LEAST_HEIGHT = 1.15
const MOST_PEAKS = 3

/** The resonances that a sweep shows with both flanks, highest above its feet first; at most three. */
export function peaksOf(sweep: MeasuredSweep, reOhm: number): Peak[] {
  const smooth = smoothed(sweep.ohm)
  const found: Peak[] = []
  for (let i = 1; i < smooth.length - 1; i++)
    if (smooth[i]! >= smooth[i - 1]! && smooth[i]! > smooth[i + 1]!)
      found.push(peakAt(sweep, smooth, i, reOhm))
  return found
    .filter(({ height }) => height > LEAST_HEIGHT)
    .sort((a, b) => b.height - a.height)
    .slice(0, MOST_PEAKS)
}

/** Median of three where that moves a reading by more than half: a single wild one makes no peak of its own. */
function smoothed(ohm: Float64Array): Float64Array {
  return ohm.map((value, i) => {
    if (i === 0 || i === ohm.length - 1) return value
    const middle = medianOf([ohm[i - 1]!, value, ohm[i + 1]!])
    return isWild(ohm, i) ? middle : value
  })
}

/** One reading three times its neighbours, which are about equal: with steps this coarse a true peak has a shoulder. */
function isWild(ohm: Float64Array, i: number): boolean {
  const [before, here, after] = [ohm[i - 1]!, ohm[i]!, ohm[i + 1]!]
  const alike = Math.max(before, after) < 1.2 * Math.min(before, after)
  return alike && (here > 3 * Math.max(before, after) || here < Math.min(before, after) / 3)
}

function peakAt(sweep: MeasuredSweep, ohm: Float64Array, top: number, reOhm: number): Peak {
  const { frequencyHz } = sweep
  const parabola = vertex(frequencyHz, ohm, top)
  const level = Math.sqrt(reOhm * parabola.maximumOhm)
  const lower = crossing(frequencyHz, ohm, top, -1, level)
  const upper = crossing(frequencyHz, ohm, top, 1, level)
  const inside = frequencyHz.filter((hz) => hz >= (lower ?? 0) && hz <= (upper ?? Number.POSITIVE_INFINITY))
  return {
    ...parabola,
    lowerHz: lower,
    upperHz: upper,
    height: ohm[top]! / Math.max(foot(ohm, top, -1), foot(ohm, top, 1)),
    readings: inside.length,
  }
}

/** Lowest reading on the way down one side, until the curve is higher than the top. */
function foot(ohm: Float64Array, top: number, step: 1 | -1): number {
  let lowest = ohm[top]!
  for (let i = top + step; i >= 0 && i < ohm.length && ohm[i]! <= ohm[top]!; i += step)
    lowest = Math.min(lowest, ohm[i]!)
  return lowest
}

/** Parabola through three readings, both axes logarithmic. */
function vertex(hz: Float64Array, ohm: Float64Array, top: number): { fHz: number; maximumOhm: number } {
  const [x0, x1, x2] = [-1, 0, 1].map((step) => Math.log(hz[top + step]! / hz[top]!)) as [
    number,
    number,
    number,
  ]
  const [y0, y1, y2] = [-1, 0, 1].map((step) => Math.log(ohm[top + step]! / ohm[top]!)) as [
    number,
    number,
    number,
  ]
  const left = (y1 - y0) / (x1 - x0)
  const right = (y2 - y1) / (x2 - x1)
  const bend = (right - left) / (x2 - x0)
  const at = (x0 + x1) / 2 - left / (2 * bend)
  if (!(bend < 0) || !(at > x0 && at < x2)) return { fHz: hz[top]!, maximumOhm: ohm[top]! }
  return { fHz: hz[top]! * Math.exp(at), maximumOhm: ohm[top]! * Math.exp(-bend * (at - x1) * (at - x1)) }
}

/** Where the curve falls through a level on one side of its top, straight on logarithmic axes; null when it does not. */
function crossing(
  hz: Float64Array,
  ohm: Float64Array,
  top: number,
  step: 1 | -1,
  level: number,
): number | null {
  if (ohm[top]! <= level) return null
  for (let i = top + step; i >= 0 && i < ohm.length; i += step) {
    if (ohm[i]! > level) continue
    const near = i - step
    const share = Math.log(ohm[near]! / level) / Math.log(ohm[near]! / ohm[i]!)
    return hz[near]! * (hz[i]! / hz[near]!) ** share
  }
  return null
}
