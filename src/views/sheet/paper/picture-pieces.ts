import type { Drawing } from '../../drawing/drawing.ts'
import { drawOn, POINTS_PER_MM } from '../../drawing/pdf.ts'
import { type Code, codeSideMm, runsOf } from '../code.ts'
import { heightOfWords, type TextColumn, type Type, write } from './column.ts'
import type { Piece } from './flow.ts'

/** Room that a heading above a picture keeps for itself. */
const HEADING_PT = 30

/** A drawing among the text, as large as it is where it fits. */
export function drawingPiece(column: TextColumn, drawing: Drawing): Piece {
  const { document, leftPt, topPt, widthPt } = column
  const [naturalPt, tallPt] = [drawing.widthMm * POINTS_PER_MM, drawing.heightMm * POINTS_PER_MM]
  const scale = Math.min(1, widthPt / naturalPt, (column.heightPt - HEADING_PT) / tallPt)
  return {
    gapPt: 4,
    heightPt: scale * tallPt,
    draw: (yPt) =>
      drawOn(document, drawing, {
        xPt: leftPt + (widthPt - scale * naturalPt) / 2,
        yPt: topPt + yPt,
        scale,
      }),
  }
}

const BODY: Type = { sizePt: 9 }
const BESIDE_PT = 14
const BETWEEN_PT = 6

/** A code to scan with words beside it; in a reader the code is a link as well. */
export function codePiece(
  { document, leftPt, topPt, widthPt }: TextColumn,
  { link, code, says }: { link: string; code: Code; says: readonly string[] },
): Piece {
  const sidePt = codeSideMm(code) * POINTS_PER_MM
  const modulePt = code.moduleMm * POINTS_PER_MM
  const roomPt = widthPt - sidePt - BESIDE_PT
  const heights = says.map((words) => heightOfWords(document, words, roomPt, BODY))
  const wordsPt = heights.reduce((sum, height) => sum + height + BETWEEN_PT, -BETWEEN_PT)
  const heightPt = Math.max(sidePt, wordsPt)
  return {
    gapPt: 4,
    heightPt,
    draw: (yPt) => {
      const top = topPt + yPt
      for (const { x, y, length } of runsOf(code))
        document.rect(leftPt + x * modulePt, top + y * modulePt, length * modulePt, modulePt)
      document.fill('#000000')
      document.link(leftPt, top, sidePt, sidePt, link)
      let downPt = top + (heightPt - wordsPt) / 2
      for (const [index, words] of says.entries()) {
        write(document, words, { xPt: leftPt + sidePt + BESIDE_PT, yPt: downPt, widthPt: roomPt }, BODY)
        downPt += (heights[index] ?? 0) + BETWEEN_PT
      }
    },
  }
}
