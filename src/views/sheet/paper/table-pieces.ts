import type { Column } from '../block.ts'
import { heightOfWords, type TextColumn, type Type, write } from './column.ts'
import type { Piece } from './flow.ts'
import { together } from './text-pieces.ts'

const CELL: Type = { sizePt: 8.2 }
const PAD_PT = 2.4
const BETWEEN_PT = 8

interface Cell {
  words: string
  xPt: number
  widthPt: number
  type: Type
}

function cellsOf(
  { leftPt, widthPt }: TextColumn,
  columns: readonly Column[],
  row: readonly string[],
  bold: boolean,
): Cell[] {
  const shares = columns.reduce((sum, { share }) => sum + share, 0)
  let startPt = leftPt
  return columns.map(({ share, isNumber = false }, index) => {
    const roomPt = (share / shares) * (widthPt + BETWEEN_PT)
    const cell = {
      words: row[index] ?? '',
      xPt: startPt,
      widthPt: roomPt - BETWEEN_PT,
      type: { ...CELL, bold, align: isNumber ? ('right' as const) : ('left' as const) },
    }
    startPt += roomPt
    return cell
  })
}

function rowPiece(column: TextColumn, cells: readonly Cell[], rulePt: number): Piece {
  const { document, leftPt, widthPt, topPt } = column
  const innerPt = Math.max(
    0,
    ...cells.map(({ words, widthPt: roomPt, type }) => heightOfWords(document, words, roomPt, type)),
  )
  const heightPt = innerPt + 2 * PAD_PT
  return {
    gapPt: 0,
    heightPt,
    draw: (yPt) => {
      const top = topPt + yPt
      for (const { words, type, ...place } of cells)
        write(document, words, { ...place, yPt: top + PAD_PT }, type)
      document
        .lineWidth(rulePt)
        .strokeColor(rulePt > 0.5 ? '#000000' : '#8a8a8a')
        .moveTo(leftPt, top + heightPt)
        .lineTo(leftPt + widthPt, top + heightPt)
        .stroke()
    },
  }
}

/** A table, row by row; its head is repeated on every page. */
export function tablePieces(
  column: TextColumn,
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
): Piece[] {
  const titles = columns.map(({ title }) => title)
  const head = rowPiece(column, cellsOf(column, columns, titles, true), 0.8)
  const body = rows.map((row) => rowPiece(column, cellsOf(column, columns, row, false), 0.4))
  return [{ ...head, gapPt: 5, keepWithNext: true }, ...together(body).map((piece) => ({ ...piece, head }))]
}
