import type { Drawing } from './drawing.ts'
import { type Heading, type Paper, page, roomOn } from './paper.ts'
import { type Column, type Row, ruledTable } from './ruled-table.ts'
import { at } from './shapes.ts'

/** A table on as many pages as it takes; none for no rows. */
export function tablePages(
  paper: Paper,
  heading: Heading,
  columns: readonly Column[],
  rows: readonly Row[],
): Drawing[] {
  const room = roomOn(paper, heading)
  const pages: Drawing[] = []
  let left = rows
  while (left.length > 0) {
    const table = ruledTable(at(room.xMm, room.yMm + room.widthMm), columns, left, room.widthMm)
    pages.push(page(paper, heading, [{ shapes: table.shapes }]))
    left = table.left
  }
  return pages
}
