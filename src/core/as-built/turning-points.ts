import { medianOf } from '../measurement/median.ts'
import type { MeasuredSweep } from '../measurement/sweep.ts'

/** A peak or a dip between the first and the last point of a sweep. */
export interface TurningPoint {
  kind: 'peak' | 'dip'
  hz: number
  ohm: number
}

/** Less than this up and down is no peak. Common practice, no source. */
const LEAST_RISE = 0.08
/** A turn must stand this many times above the scatter of neighbouring points. Common practice, no source. */
const OVER_SCATTER = 5
/** Points this near to the top, as a share of it, or this many times the scatter, decide where it is. Common practice, no source. */
const NEAR_TOP = 0.02
const NEAR_SCATTER = 4
const MOST_NEAR = 8

/** Scatter of the points about a smooth curve: of second differences, whose standard deviation is √6 of one point's. */
function scatter(log: readonly number[]): number {
  const bends = log.slice(2).map((value, i) => Math.abs(value - 2 * log[i + 1]! + log[i]!))
  return (1.4826 * medianOf(bends)) / Math.sqrt(6)
}

/** Places where the curve turns by more than `rise`, alternating. */
function turnsOf(log: readonly number[], rise: number): { at: number; kind: TurningPoint['kind'] }[] {
  const found: { at: number; kind: TurningPoint['kind'] }[] = []
  let high = 0
  let low = 0
  let seeking: TurningPoint['kind'] | null = null
  log.forEach((value, i) => {
    if (value > log[high]!) high = i
    if (value < log[low]!) low = i
    if (seeking !== 'dip' && value < log[high]! - rise) {
      found.push({ at: high, kind: 'peak' })
      seeking = 'dip'
      low = i
    } else if (seeking !== 'peak' && value > log[low]! + rise) {
      found.push({ at: low, kind: 'dip' })
      seeking = 'peak'
      high = i
    }
  })
  return found
}

interface Sums {
  s: number[]
  t: number[]
}

/** Least squares parabola y = a + bx + cx² through some points; null where they lie on a line or are too few. */
function parabola(x: readonly number[], y: readonly number[]): [number, number, number] | null {
  const { s, t } = x.reduce<Sums>(
    (sums, value, i) => ({
      s: sums.s.map((sum, power) => sum + value ** power),
      t: sums.t.map((sum, power) => sum + y[i]! * value ** power),
    }),
    { s: [0, 0, 0, 0, 0], t: [0, 0, 0] },
  )
  const det = (m: readonly number[]) =>
    m[0]! * (m[4]! * m[8]! - m[5]! * m[7]!) -
    m[1]! * (m[3]! * m[8]! - m[5]! * m[6]!) +
    m[2]! * (m[3]! * m[7]! - m[4]! * m[6]!)
  const rows = [s[0]!, s[1]!, s[2]!, s[1]!, s[2]!, s[3]!, s[2]!, s[3]!, s[4]!]
  const whole = det(rows)
  if (x.length < 3 || !(Math.abs(whole) > 1e-12 * s[0]! * s[2]! * s[4]!)) return null
  const [a, b, c] = [0, 1, 2].map(
    (column) => det(rows.map((value, i) => (i % 3 === column ? t[Math.floor(i / 3)]! : value))) / whole,
  )
  return [a!, b!, c!]
}

/** The top of the parabola through the points next to a turn; the turn itself where there is no such top. */
function refined(
  { frequencyHz, ohm }: MeasuredSweep,
  { at, kind }: { at: number; kind: TurningPoint['kind'] },
  near: number,
): TurningPoint {
  const top = Math.log(ohm[at]!)
  const isNear = (i: number) =>
    i >= 0 && i < ohm.length && Math.abs(i - at) <= MOST_NEAR && Math.abs(Math.log(ohm[i]!) - top) < near
  let from = at
  let to = at
  while (isNear(from - 1)) from--
  while (isNear(to + 1)) to++
  const range = {
    from: Math.max(0, Math.min(from, at - 1)),
    to: Math.min(ohm.length - 1, Math.max(to, at + 1)),
  }
  const places = Array.from({ length: range.to - range.from + 1 }, (_, i) => range.from + i)
  const x = places.map((i) => Math.log(frequencyHz[i]! / frequencyHz[at]!))
  const fitted = parabola(
    x,
    places.map((i) => Math.log(ohm[i]!)),
  )
  const own = { kind, hz: frequencyHz[at]!, ohm: ohm[at]! }
  if (fitted === null) return own
  const [a, b, c] = fitted
  const shift = -b / (2 * c)
  const inside = shift >= x[0]! && shift <= x.at(-1)!
  return inside && c < 0 === (kind === 'peak')
    ? { kind, hz: own.hz * Math.exp(shift), ohm: Math.exp(a + (b * shift) / 2) }
    : own
}

/** Scatter of the readings of a sweep about a smooth curve, as a share of the impedance. */
export const scatterOf = ({ ohm }: MeasuredSweep): number => scatter(Array.from(ohm, Math.log))

/**
 * Peaks and dips of a sweep that stand out of its scatter, by frequency; places by a parabola in double logarithms.
 * Common practice, no source.
 */
export function turningPoints(curve: MeasuredSweep): TurningPoint[] {
  const log = Array.from(curve.ohm, Math.log)
  const noise = scatter(log)
  const turns = turnsOf(log, Math.max(LEAST_RISE, OVER_SCATTER * noise))
  const near = Math.max(NEAR_TOP, NEAR_SCATTER * noise)
  // The end of a sweep is no peak and no dip.
  return turns.filter(({ at }) => at > 0 && at < log.length - 1).map((turn) => refined(curve, turn, near))
}
