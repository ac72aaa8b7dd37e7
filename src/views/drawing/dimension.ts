import type { Point, Shape } from './drawing.ts'
import { figure } from './figures.ts'
import { at, line, TYPE_MM, text } from './shapes.ts'
import { typeWidthMm } from './type-width.ts'

const ARROW_MM = 2
const ARROW_HALF_MM = 0.5
/** Gap between the thing and its extension line, and how far that passes the dimension line. */
const GAP_MM = 1
const PAST_MM = 1.5

/** The head of an arrow that points along (dx, dy). */
const arrow = (tip: Point, dx: number, dy: number): Shape => ({
  kind: 'segments',
  role: 'dimension',
  segments: [1, -1].map((side) => [
    tip,
    at(
      tip.xMm - ARROW_MM * dx + side * ARROW_HALF_MM * dy,
      tip.yMm - ARROW_MM * dy + side * ARROW_HALF_MM * dx,
    ),
  ]),
})

/** A line with a head at each end. */
export function doubleArrow(from: Point, to: Point): Shape[] {
  const [x, y] = [to.xMm - from.xMm, to.yMm - from.yMm]
  const length = Math.hypot(x, y) || 1
  const [dx, dy] = [x / length, y / length]
  return [line('dimension', from, to), arrow(from, -dx, -dy), arrow(to, dx, dy)]
}

/**
 * The length of a thing, written below it.
 * @param fromMm     x of its left end on the paper
 * @param edgeMm     y of its lower edge on the paper
 * @param lengthMm   what is written, which differs from the paper by the scale
 * @param awayMm     from the edge to the dimension line
 */
export function lengthBelow(
  fromMm: number,
  toMm: number,
  edgeMm: number,
  lengthMm: number,
  awayMm: number,
): Shape[] {
  const y = edgeMm - awayMm
  return [
    line('dimension', at(fromMm, edgeMm - GAP_MM), at(fromMm, y - PAST_MM)),
    line('dimension', at(toMm, edgeMm - GAP_MM), at(toMm, y - PAST_MM)),
    ...doubleArrow(at(fromMm, y), at(toMm, y)),
    ...beside((fromMm + toMm) / 2, y, figure(lengthMm), toMm - fromMm),
  ]
}

/** On the line where there is room, below it where the thing is short. */
function beside(middleMm: number, y: number, words: string, roomMm: number): Shape[] {
  const fits = typeWidthMm(words, TYPE_MM) + 2 * ARROW_MM < roomMm
  return [text(at(middleMm, fits ? y + 0.8 : y - 3), words, { anchor: 'middle' })]
}

/** The width of a thing, written to its left and read from the right. */
export function widthAtLeft(
  fromMm: number,
  toMm: number,
  edgeMm: number,
  widthMm: number,
  awayMm: number,
): Shape[] {
  const x = edgeMm - awayMm
  const words = figure(widthMm)
  const middle = (fromMm + toMm) / 2
  const fits = typeWidthMm(words, TYPE_MM) + 2 * ARROW_MM < toMm - fromMm
  return [
    line('dimension', at(edgeMm - GAP_MM, fromMm), at(x - PAST_MM, fromMm)),
    line('dimension', at(edgeMm - GAP_MM, toMm), at(x - PAST_MM, toMm)),
    ...doubleArrow(at(x, fromMm), at(x, toMm)),
    fits
      ? text(at(x - 0.8, middle), words, { anchor: 'middle', angleDeg: 90 })
      : text(at(x - 1.2, middle - 1), words, { anchor: 'end' }),
  ]
}
