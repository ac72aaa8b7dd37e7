import { type Paper, type PaperSize, upright } from '../../drawing/paper.ts'
import { type Document, POINTS_PER_MM } from '../../drawing/pdf.ts'

/** Room to punch holes at the left, and for the foot of the page below. */
const SIDE_MM = 15
const TOP_MM = 14
const FOOT_MM = 16

/** Where the text of a page stands. */
export interface TextColumn {
  document: Document
  paper: Paper
  leftPt: number
  topPt: number
  widthPt: number
  heightPt: number
}

export function textColumn(document: Document, size: PaperSize): TextColumn {
  const paper = upright(size)
  return {
    document,
    paper,
    leftPt: SIDE_MM * POINTS_PER_MM,
    topPt: TOP_MM * POINTS_PER_MM,
    widthPt: (paper.widthMm - 2 * SIDE_MM) * POINTS_PER_MM,
    heightPt: (paper.heightMm - TOP_MM - FOOT_MM) * POINTS_PER_MM,
  }
}

/** How words are set. */
export interface Type {
  sizePt: number
  bold?: boolean
  colour?: string
  align?: 'left' | 'right'
}

/** Air between lines over the size of the type. */
const LEADING = 0.18

const faced = (document: Document, { sizePt, bold = false }: Type): Document =>
  document.font(bold ? 'heading' : 'text', sizePt)

const optionsOf = (widthPt: number, { sizePt, align = 'left' }: Type) => ({
  width: widthPt,
  align,
  lineGap: LEADING * sizePt,
})

/** Height that words take in lines of a width; asked before there is a page, so nothing is written. */
export const heightOfWords = (document: Document, words: string, widthPt: number, type: Type): number =>
  words === '' ? 0 : faced(document, type).heightOfString(words, optionsOf(widthPt, type))

/** Words in lines of a width, from an upper left corner. */
export function write(
  document: Document,
  words: string,
  { xPt, yPt, widthPt }: { xPt: number; yPt: number; widthPt: number },
  type: Type,
): void {
  const { colour = '#000000' } = type
  if (words !== '') faced(document, type).fillColor(colour).text(words, xPt, yPt, optionsOf(widthPt, type))
}
