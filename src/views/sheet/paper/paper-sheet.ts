import type { Drawing } from '../../drawing/drawing.ts'
import { addDrawing, type Document, POINTS_PER_MM, pdfBytes } from '../../drawing/pdf.ts'
import { shortened } from '../../drawing/type-width.ts'
import type { Block, Sheet } from '../block.ts'
import { type SheetOrder, sheetOf } from '../sheet-of.ts'
import { chartPiece } from './chart-piece.ts'
import { type TextColumn, textColumn, write } from './column.ts'
import { flowed, type PageOf, type Piece } from './flow.ts'
import { codePiece, drawingPiece } from './picture-pieces.ts'
import { tablePieces } from './table-pieces.ts'
import {
  cautionPiece,
  findingPieces,
  headingPiece,
  listPieces,
  sectionPiece,
  wordsPiece,
} from './text-pieces.ts'
import { verdictPiece } from './verdict-piece.ts'

/** The whole build sheet on paper: pages of text, then the drawings at true size, all numbered. */
export function paperSheet(order: SheetOrder): Promise<Uint8Array> {
  const sheet = sheetOf(order)
  return pdfBytes(sheet.title, (document) => {
    const column = textColumn(document, order.paper)
    const pages = flowed(piecesOf(column, sheet), column.heightPt)
    const drawings = drawingsOf(sheet)
    const all = pages.length + drawings.length
    const pageOf = placesOf(sheet, pages.length)
    for (const [index, placed] of pages.entries()) {
      document.addPage({
        size: [column.paper.widthMm * POINTS_PER_MM, column.paper.heightMm * POINTS_PER_MM],
        margin: 0,
      })
      for (const { piece, yPt } of placed) piece.draw(yPt, pageOf)
      number(document, column.paper, { page: index + 1, all, title: sheet.title })
    }
    for (const [index, drawing] of drawings.entries()) {
      addDrawing(document, drawing)
      document.outline.addItem(drawing.title)
      number(document, drawing, { page: pages.length + index + 1, all, title: '' })
    }
  })
}

const pagesBlocks = ({ sections }: Sheet) =>
  sections.flatMap(({ blocks }) => blocks.flatMap((block) => (block.kind === 'pages' ? [block] : [])))

const drawingsOf = (sheet: Sheet): Drawing[] => pagesBlocks(sheet).flatMap(({ pages }) => pages)

/** Where the drawings of each kind begin behind the text. */
function placesOf(sheet: Sheet, textPages: number): PageOf {
  const places = new Map<string, { first: number; count: number }>()
  let first = textPages + 1
  for (const { what, pages } of pagesBlocks(sheet)) {
    places.set(what, { first, count: pages.length })
    first += pages.length
  }
  return (what) => places.get(what) ?? { first: 0, count: 0 }
}

const FOOT_SIZE_MM = 2.4
/** Below what the drawings use and above what printers leave bare. */
const FOOT_MM = 8
const FOOT_SIDE_MM = 10

/** The number of the page in its lower right corner, the name of the sheet in the left one. */
function number(
  document: Document,
  { widthMm, heightMm }: { widthMm: number; heightMm: number },
  { page, all, title }: { page: number; all: number; title: string },
): void {
  const type = { sizePt: FOOT_SIZE_MM * POINTS_PER_MM }
  const roomMm = widthMm - 2 * FOOT_SIDE_MM
  const place = {
    xPt: FOOT_SIDE_MM * POINTS_PER_MM,
    yPt: (heightMm - FOOT_MM - 0.95 * FOOT_SIZE_MM) * POINTS_PER_MM,
    widthPt: roomMm * POINTS_PER_MM,
  }
  write(document, shortened(title, roomMm - 30, FOOT_SIZE_MM), place, type)
  write(document, `page ${page} of ${all}`, place, { ...type, align: 'right' })
}

function piecesOf(column: TextColumn, { title, verdict, said, answer, sections }: Sheet): Piece[] {
  const pieces: Piece[] = [
    wordsPiece(column, title, { sizePt: 18, bold: true }),
    verdictPiece(column, verdict, said),
    wordsPiece(column, answer, { sizePt: 10 }, 8),
  ]
  for (const { heading, blocks } of sections) {
    const inside = blocks.flatMap((block) => blockPieces(column, block))
    if (inside.length > 0) pieces.push(sectionPiece(column, heading), ...inside)
  }
  return pieces
}

function blockPieces(column: TextColumn, block: Block): Piece[] {
  switch (block.kind) {
    case 'heading':
      return [headingPiece(column, block.text)]
    case 'paragraph':
      return [wordsPiece(column, block.text)]
    case 'list':
      return listPieces(column, block.items)
    case 'table':
      return tablePieces(column, block.columns, block.rows)
    case 'caution':
      return [cautionPiece(column, block.text)]
    case 'finding':
      return findingPieces(column, block)
    case 'chart':
      return [chartPiece(column, block.svg)]
    case 'drawing':
      return [drawingPiece(column, block.drawing)]
    case 'code':
      return [codePiece(column, block)]
    case 'pages':
      return block.pages.length === 0 ? [] : [referencePiece(column, block.what)]
  }
}

/** Tells on which pages the drawings are; known only when the text is laid out. */
function referencePiece(column: TextColumn, what: string): Piece {
  const piece = wordsPiece(column, `${what}: pages 000 to 000.`)
  return {
    ...piece,
    draw: (yPt, pageOf) => {
      const { first, count } = pageOf(what)
      const pages = count === 1 ? `page ${first}` : `pages ${first} to ${first + count - 1}`
      wordsPiece(column, `${what}: ${pages}.`).draw(yPt, pageOf)
    },
  }
}
