import { line } from 'd3-shape'
import { type Axis, type CurveValue, isNumber } from './axis.ts'

export type Point = readonly [x: number, y: number]

/** A curve's points in the picture, split where a value is missing. */
export function curvePieces(
  x: Axis,
  y: Axis,
  frequencyHz: readonly number[],
  values: readonly CurveValue[],
): Point[][] {
  const pieces: Point[][] = [[]]
  for (const [index, hz] of frequencyHz.entries()) {
    const value = values[index]
    const place = isNumber(value) && hz > 0 ? ([x.at(hz), y.at(value)] as const) : null
    if (place?.every((coordinate) => Number.isFinite(coordinate))) pieces.at(-1)?.push(place)
    else pieces.push([])
  }
  return pieces.filter((piece) => piece.length > 0)
}

const draw = line<Point>().digits(2)

/** The path of the pieces: each begins with a move of its own. */
export const curvePath = (pieces: readonly Point[][]): string =>
  pieces.map((piece) => draw(piece) ?? '').join('')
