import type { Point, Shape } from './drawing.ts'
import { at, line, text } from './shapes.ts'
import { wrapped } from './type-width.ts'

export interface Column {
  title: string
  widthMm: number
}

const SIZE_MM = 2.6
const LINE_MM = 3.5
const CELL_PAD_MM = 1

export type Row = readonly string[]

const linesOf = (row: Row, columns: readonly Column[]): string[][] =>
  columns.map(({ widthMm }, index) => wrapped(row[index] ?? '', widthMm - 2 * CELL_PAD_MM, SIZE_MM))

/** Height of a row, its longest cell in as many lines as it needs. */
const heightMm = (cells: readonly string[][]): number =>
  LINE_MM * Math.max(1, ...cells.map((lines) => lines.length)) + CELL_PAD_MM

/** Rows of a table as far as they fit a height, and the rows that are left. */
export interface Laid {
  shapes: Shape[]
  left: readonly Row[]
  heightMm: number
}

/**
 * A table from its upper left corner downwards, ruled between its rows.
 * @param roomMm  height at most; at least one row is laid, so that a caller gets on
 */
export function ruledTable(
  corner: Point,
  columns: readonly Column[],
  rows: readonly Row[],
  roomMm: number,
): Laid {
  const starts = columns.map(
    (_, index) => corner.xMm + columns.slice(0, index).reduce((sum, c) => sum + c.widthMm, 0),
  )
  const endMm = corner.xMm + columns.reduce((sum, { widthMm }) => sum + widthMm, 0)
  const rule = (y: number) => line('hatch', at(corner.xMm, y), at(endMm, y))
  const cellsAt = (cells: readonly string[][], y: number, role: 'text' | 'heading'): Shape[] =>
    cells.flatMap((lines, column) =>
      lines.map((words, index) =>
        text(at(starts[column]! + CELL_PAD_MM, y - LINE_MM * (index + 1) + 0.6), words, {
          sizeMm: SIZE_MM,
          role,
        }),
      ),
    )
  const head = columns.map(({ title }) => [title])
  let y = corner.yMm - LINE_MM - CELL_PAD_MM
  const shapes: Shape[] = [...cellsAt(head, corner.yMm, 'heading'), rule(y)]
  let laid = 0
  for (const row of rows) {
    const cells = linesOf(row, columns)
    const height = heightMm(cells)
    if (laid > 0 && corner.yMm - (y - height) > roomMm) break
    shapes.push(...cellsAt(cells, y, 'text'), rule(y - height))
    y -= height
    laid++
  }
  return { shapes, left: rows.slice(laid), heightMm: corner.yMm - y }
}
