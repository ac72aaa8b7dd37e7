import type { Severity } from '../../../schema/frame.ts'
import { heightOfWords, type TextColumn, type Type, write } from './column.ts'
import type { Piece } from './flow.ts'

const BODY: Type = { sizePt: 9 }
const BOLD: Type = { sizePt: 9, bold: true }
const BULLET_PT = 11
const PAD_PT = 4
/** Width of the word before a caution or a finding. */
const LABEL_PT = 52
const BAR_PT = 8

/** Words across the column. */
export function wordsPiece(column: TextColumn, words: string, type: Type = BODY, gapPt = 4): Piece {
  const { document, leftPt, widthPt, topPt } = column
  return {
    gapPt,
    heightPt: heightOfWords(document, words, widthPt, type),
    draw: (yPt) => write(document, words, { xPt: leftPt, yPt: topPt + yPt, widthPt }, type),
  }
}

/** The name of a section over a rule; it is listed among the marks of the document. */
export function sectionPiece(column: TextColumn, heading: string): Piece {
  const words = wordsPiece(column, heading, { sizePt: 13, bold: true }, 18)
  const { document, leftPt, widthPt, topPt } = column
  return {
    ...words,
    heightPt: words.heightPt + 5,
    keepWithNext: true,
    draw: (yPt, pageOf) => {
      document.outline.addItem(heading)
      words.draw(yPt, pageOf)
      const rulePt = topPt + yPt + words.heightPt + 0.5
      document
        .lineWidth(0.8)
        .strokeColor('#000000')
        .moveTo(leftPt, rulePt)
        .lineTo(leftPt + widthPt, rulePt)
        .stroke()
    },
  }
}

export const headingPiece = (column: TextColumn, text: string): Piece => ({
  ...wordsPiece(column, text, { sizePt: 10, bold: true }, 9),
  keepWithNext: true,
})

/** An item of a list, moved in by what stands before it. */
function itemPiece({ document, leftPt, widthPt, topPt }: TextColumn, text: string, inPt = 0): Piece {
  const room = { xPt: leftPt + inPt + BULLET_PT, widthPt: widthPt - inPt - BULLET_PT }
  return {
    gapPt: 1.5,
    heightPt: heightOfWords(document, text, room.widthPt, BODY),
    draw: (yPt) => {
      write(document, '•', { xPt: leftPt + inPt + 2, yPt: topPt + yPt, widthPt: BULLET_PT }, BODY)
      write(document, text, { ...room, yPt: topPt + yPt }, BODY)
    },
  }
}

/** Items of a list; the first one is not left alone at the foot of a page, nor the last one at the top of the next. */
export const listPieces = (column: TextColumn, items: readonly string[]): Piece[] =>
  together(items.map((item, index) => ({ ...itemPiece(column, item), ...(index === 0 && { gapPt: 4 }) })))

/** Short runs of pieces stay whole; of a long one, two pieces at least stand on either page. */
export const together = (pieces: readonly Piece[]): Piece[] =>
  pieces.map((piece, index) =>
    index === 0 || index === pieces.length - 2
      ? { ...piece, keepWithNext: index < pieces.length - 1 }
      : piece,
  )

/** What can hurt, in a frame. */
export function cautionPiece({ document, leftPt, widthPt, topPt }: TextColumn, text: string): Piece {
  const roomPt = widthPt - 2 * PAD_PT - LABEL_PT
  const wordsPt = heightOfWords(document, text, roomPt, BODY)
  const heightPt = wordsPt + 2 * PAD_PT
  return {
    gapPt: 4,
    heightPt,
    keepWithNext: true,
    draw: (yPt) => {
      const top = topPt + yPt
      document.lineWidth(0.8).strokeColor('#000000').rect(leftPt, top, widthPt, heightPt).stroke()
      write(document, 'Caution', { xPt: leftPt + PAD_PT, yPt: top + PAD_PT, widthPt: LABEL_PT }, BOLD)
      write(document, text, { xPt: leftPt + PAD_PT + LABEL_PT, yPt: top + PAD_PT, widthPt: roomPt }, BODY)
    },
  }
}

const BARS: Record<Severity, { widthPt: number; colour: string }> = {
  blocker: { widthPt: 4, colour: '#000000' },
  warning: { widthPt: 3, colour: '#000000' },
  note: { widthPt: 1, colour: '#767676' },
}

interface Found {
  severity: Severity
  message: string
  remedies: readonly string[]
}

/** What was found, a bar beside it as wide as it matters, and what can be done. */
export function findingPieces(column: TextColumn, { severity, message, remedies }: Found): Piece[] {
  const { document, leftPt, topPt } = column
  const roomPt = column.widthPt - BAR_PT - LABEL_PT
  const said: Piece = {
    gapPt: 8,
    heightPt: heightOfWords(document, message, roomPt, BOLD),
    draw: (yPt) => {
      write(document, severity, { xPt: leftPt + BAR_PT, yPt: topPt + yPt, widthPt: LABEL_PT }, BOLD)
      write(document, message, { xPt: leftPt + BAR_PT + LABEL_PT, yPt: topPt + yPt, widthPt: roomPt }, BOLD)
    },
  }
  const pieces = [said, ...remedies.map((remedy) => itemPiece(column, remedy, BAR_PT + LABEL_PT))]
  const bar = BARS[severity]
  return pieces.map((piece, index) => ({
    ...piece,
    keepWithNext: index < pieces.length - 1,
    draw: (yPt, pageOf) => {
      const overPt = index === 0 ? 0 : piece.gapPt
      document
        .fillColor(bar.colour)
        .rect(leftPt, topPt + yPt - overPt, bar.widthPt, piece.heightPt + overPt)
        .fill()
      piece.draw(yPt, pageOf)
    },
  }))
}
