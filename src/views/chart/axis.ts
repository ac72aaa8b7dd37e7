/** One direction of a plot: where a value lies, and what is written and ruled along it. */
export interface Axis {
  /** Place of a value in units of the picture; it may lie outside the range. */
  at: (value: number) => number
  ticks: readonly Tick[]
  /** Values of the fine lines between the ticks. */
  fine: readonly number[]
}

export interface Tick {
  value: number
  text: string
}

/** Where an axis begins and ends in the picture. */
export type Range = readonly [from: number, to: number]

/** Makes an axis for the range it is given. */
export type AxisOn = (range: Range) => Axis

/** A value of a curve; `null`, and whatever is no number, is a gap. */
export type CurveValue = number | null | undefined

export const isNumber = (value: CurveValue): value is number => Number.isFinite(value)
