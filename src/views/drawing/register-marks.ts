import type { Shape } from './drawing.ts'
import { at, circle, cross, line } from './shapes.ts'
import { OVERLAP_MM, type Tile, type Tiling } from './tiles.ts'

const ARM_MM = 4
const RING_MM = 2

/** Where two tiles overlap, along the middle of the overlap: these shares of the way. */
const SHARES = [0.2, 0.8]

/**
 * Marks that two neighbours both show, to be laid on each other, and the line to cut along: in the measures of the
 * thing, so that they fall together.
 */
export function registerMarks({ window, column, row }: Tile, { columns, rows }: Tiling): Shape[] {
  const { xMm, yMm, lengthMm, widthMm } = window
  const upright = [
    ...(column > 0 ? [xMm + OVERLAP_MM / 2] : []),
    ...(column < columns - 1 ? [xMm + lengthMm - OVERLAP_MM / 2] : []),
  ]
  const level = [
    ...(row < rows - 1 ? [yMm + OVERLAP_MM / 2] : []),
    ...(row > 0 ? [yMm + widthMm - OVERLAP_MM / 2] : []),
  ]
  const marks = [
    ...upright.flatMap((x) => SHARES.map((share) => at(x, yMm + share * widthMm))),
    ...level.flatMap((y) => SHARES.map((share) => at(xMm + share * lengthMm, y))),
  ]
  return [
    ...upright.map((x) => line('guide', at(x, yMm), at(x, yMm + widthMm))),
    ...level.map((y) => line('guide', at(xMm, y), at(xMm + lengthMm, y))),
    ...marks.flatMap((mark) => [cross('mark', mark, ARM_MM), circle('mark', mark, RING_MM)]),
  ]
}
