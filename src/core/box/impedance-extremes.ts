import { logSpaced } from './circuit.ts'
import type { Loudspeaker } from './loudspeaker.ts'
import { solveLoudspeaker } from './solve-loudspeaker.ts'

/** A point of an impedance curve. */
export interface ImpedancePoint {
  hz: number
  ohm: number
}

export interface ImpedanceExtremes {
  minimum: ImpedancePoint
  peaks: ImpedancePoint[]
  dips: ImpedancePoint[]
}

const FROM_HZ = 10
const TO_HZ = 20_000
const POINTS = 400

/** Top of the parabola through three neighbouring points of equal ratio. */
function vertex(hz: Float64Array, ohm: Float64Array, i: number): ImpedancePoint {
  const [a, b, c] = [ohm[i - 1]!, ohm[i]!, ohm[i + 1]!]
  const shift = (0.5 * (a - c)) / (a - 2 * b + c)
  return { hz: hz[i]! * (hz[i + 1]! / hz[i]!) ** shift, ohm: b - 0.25 * (a - c) * shift }
}

/** Peaks, dips and the lowest point of the impedance of a channel from 10 Hz to 20 kHz. Found on the circuit. */
export function impedanceExtremes(speaker: Loudspeaker): ImpedanceExtremes {
  const hz = logSpaced(FROM_HZ, TO_HZ, POINTS)
  const { channelRe, channelIm } = solveLoudspeaker(speaker, hz, 1)
  const ohm = channelRe.map((re, i) => Math.hypot(re, channelIm[i]!))
  const peaks: ImpedancePoint[] = []
  const dips: ImpedancePoint[] = []
  for (let i = 1; i < POINTS - 1; i++) {
    const [before, here, after] = [ohm[i - 1]!, ohm[i]!, ohm[i + 1]!]
    if (here > before && here >= after) peaks.push(vertex(hz, ohm, i))
    if (here < before && here <= after) dips.push(vertex(hz, ohm, i))
  }
  const ends = [0, POINTS - 1].map((i) => ({ hz: hz[i]!, ohm: ohm[i]! }))
  const minimum = [...dips, ...ends].reduce((least, point) => (point.ohm < least.ohm ? point : least))
  return { minimum, peaks, dips }
}
