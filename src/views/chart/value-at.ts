import { type CurveValue, isNumber } from './axis.ts'

/** Value of a curve at a frequency, straight between its points over the logarithm; null beyond them or in a gap. */
export function valueAt(
  frequencyHz: readonly number[],
  values: readonly CurveValue[],
  hz: number,
): number | null {
  const after = frequencyHz.findIndex((point) => point >= hz)
  const [toHz, to] = [frequencyHz[after], values[after]]
  if (toHz === undefined || !isNumber(to)) return null
  if (toHz === hz) return to
  const [fromHz, from] = [frequencyHz[after - 1], values[after - 1]]
  if (fromHz === undefined || !isNumber(from)) return null
  return from + ((to - from) * Math.log(hz / fromHz)) / Math.log(toHz / fromHz)
}
