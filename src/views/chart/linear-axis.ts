import { scaleLinear } from 'd3-scale'
import { type AxisOn, type CurveValue, isNumber } from './axis.ts'
import { tickText } from './tick-text.ts'

interface LinearAxis {
  /** Lowest and highest value. */
  domain: readonly [from: number, to: number]
  ticks: readonly number[]
}

const PREFIX_FROM = 10_000
const USUAL_TICKS = 6

/** An axis of even steps with ticks of one's own. */
export const linearAxis =
  ({ domain, ticks }: LinearAxis): AxisOn =>
  (range) => ({
    at: scaleLinear(domain, range),
    ticks: ticks.map((value) => ({ value, text: tickText(value, PREFIX_FROM) })),
    fine: [],
  })

/** An axis of even steps from tick to tick around all the values. */
export function axisAround(values: readonly CurveValue[]): AxisOn {
  const scale = scaleLinear(valueDomain(values), [0, 1]).nice(USUAL_TICKS)
  const [from = 0, to = 1] = scale.domain()
  return linearAxis({ domain: [from, to], ticks: scale.ticks(USUAL_TICKS) })
}

/** Lowest and highest value; a tenth to each side of a single one, and upwards from nothing but zeros. */
export function valueDomain(values: readonly CurveValue[]): readonly [number, number] {
  const numbers = values.filter(isNumber)
  if (numbers.length === 0) return [0, 1]
  const from = numbers.reduce((least, value) => Math.min(least, value))
  const to = numbers.reduce((most, value) => Math.max(most, value))
  if (from < to) return [from, to]
  if (from === 0) return [0, 1]
  const room = Math.abs(from) / 10
  return [from - room, to + room]
}
