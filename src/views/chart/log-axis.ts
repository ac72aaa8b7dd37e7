import { scaleLinear, scaleLog } from 'd3-scale'
import { type AxisOn, type CurveValue, isNumber } from './axis.ts'
import { tickText } from './tick-text.ts'

interface LogAxis {
  /** Lowest and highest value, above 0. */
  domain: readonly [from: number, to: number]
  /** Labels that find room. */
  mostTicks: number
  prefixFrom: number
}

/** A logarithmic axis, ticked at 1, 2 and 5 of each decade where that finds room. */
export const logAxis =
  ({ domain, mostTicks, prefixFrom }: LogAxis): AxisOn =>
  (range) => {
    const scale = scaleLog(domain, range)
    const ticks = logTicks(domain, mostTicks)
    const fine = decadeValues(domain, [1, 2, 3, 4, 5, 6, 7, 8, 9]).filter((value) => !ticks.includes(value))
    return {
      at: scale,
      ticks: ticks.map((value) => ({ value, text: tickText(value, prefixFrom) })),
      fine: fine.length > 9 * mostTicks ? [] : fine,
    }
  }

/** Lowest and highest positive value; an octave to each side when there is but one, and a range of its own for none. */
export function positiveDomain(
  values: readonly CurveValue[],
  whenNone: readonly [number, number],
): readonly [number, number] {
  const positive = values.filter(isNumber).filter((value) => value > 0)
  if (positive.length === 0) return whenNone
  const from = positive.reduce((least, value) => Math.min(least, value))
  const to = positive.reduce((most, value) => Math.max(most, value))
  return from < to ? [from, to] : [from / 2, to * 2]
}

/** The domain widened to the next 1, 2 or 5, so that an axis of values ends on a tick. */
export function roundDomain([from, to]: readonly [number, number]): readonly [number, number] {
  const around = decadeValues([from / 10, to * 10], [1, 2, 5])
  return [around.filter((value) => value <= from).at(-1) ?? from, around.find((value) => value >= to) ?? to]
}

function logTicks(domain: readonly [number, number], most: number): readonly number[] {
  const usual = decadeValues(domain, [1, 2, 5])
  if (usual.length < 3) return scaleLinear(domain, [0, 1]).ticks(5)
  if (usual.length <= most) return usual
  const decades = decadeValues(domain, [1])
  const every = Math.ceil(decades.length / most)
  return decades.filter((_, index) => index % every === 0)
}

/** The given multiples of the powers of ten inside a domain. Written in text, as 10 ** -4 is no round number. */
function decadeValues([from, to]: readonly [number, number], multiples: readonly number[]): number[] {
  const first = Math.floor(Math.log10(from))
  const decades = Array.from({ length: Math.ceil(Math.log10(to)) - first + 1 }, (_, index) => first + index)
  return decades
    .flatMap((decade) => multiples.map((multiple) => Number(`${multiple}e${decade}`)))
    .filter((value) => value >= from && value <= to)
}
