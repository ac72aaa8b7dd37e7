import type { Drawing, Layer, Rectangle, Shape } from './drawing.ts'
import { at, line, text } from './shapes.ts'
import { shortened, wrapped } from './type-width.ts'

export type PaperSize = 'A4' | 'Letter'

export interface Paper {
  widthMm: number
  heightMm: number
}

/** Short and long side. A4: ISO 216; Letter: 8 1/2 by 11 inches. */
const PAPERS = {
  A4: { widthMm: 210, heightMm: 297 },
  Letter: { widthMm: 215.9, heightMm: 279.4 },
} satisfies Record<PaperSize, Paper>

/** Edge that printers leave bare; most need about 5. Common practice, no source. */
export const MARGIN_MM = 10
/** Room for the title and the line under it. */
const HEAD_MM = 17
const TITLE_MM = 5
const SUBTITLE_MM = 3
const NOTE_MM = 2.5
const NOTE_LINE_MM = 3.6

export const upright = (size: PaperSize): Paper => PAPERS[size]
export const onItsSide = (size: PaperSize): Paper => ({
  widthMm: PAPERS[size].heightMm,
  heightMm: PAPERS[size].widthMm,
})

export interface Heading {
  title: string
  /** The line under the title. */
  subtitle: string
  /** Sentences at the foot: what to look out for. */
  notes: readonly string[]
}

const noteLines = ({ notes }: Heading, { widthMm }: Paper): string[] =>
  notes.flatMap((note) => wrapped(note, widthMm - 2 * MARGIN_MM, NOTE_MM))

/** What is left of a page between its head and its foot. */
export function roomOn(paper: Paper, heading: Heading): Rectangle {
  const footMm = noteLines(heading, paper).length * NOTE_LINE_MM
  const yMm = MARGIN_MM + footMm + (footMm > 0 ? 3 : 0)
  return {
    xMm: MARGIN_MM,
    yMm,
    lengthMm: paper.widthMm - 2 * MARGIN_MM,
    widthMm: paper.heightMm - MARGIN_MM - HEAD_MM - yMm,
  }
}

function headShapes({ title, subtitle }: Heading, { widthMm, heightMm }: Paper): Shape[] {
  const roomMm = widthMm - 2 * MARGIN_MM
  const topMm = heightMm - MARGIN_MM
  return [
    text(at(MARGIN_MM, topMm - 4.5), shortened(title, roomMm, TITLE_MM, 'heading'), {
      sizeMm: TITLE_MM,
      role: 'heading',
    }),
    text(at(MARGIN_MM, topMm - 10.5), shortened(subtitle, roomMm, SUBTITLE_MM), { sizeMm: SUBTITLE_MM }),
    line('dimension', at(MARGIN_MM, topMm - 13), at(widthMm - MARGIN_MM, topMm - 13)),
  ]
}

function footShapes(heading: Heading, paper: Paper): Shape[] {
  const lines = noteLines(heading, paper)
  return lines.map((note, index) =>
    text(at(MARGIN_MM, MARGIN_MM + 1 + (lines.length - 1 - index) * NOTE_LINE_MM), note, { sizeMm: NOTE_MM }),
  )
}

/** A page with its title above and its notes below. */
export function page(paper: Paper, heading: Heading, layers: readonly Layer[]): Drawing {
  return {
    ...paper,
    title: heading.title,
    says: [`${heading.subtitle}.`, ...heading.notes].join(' '),
    layers: [...layers, { shapes: [...headShapes(heading, paper), ...footShapes(heading, paper)] }],
  }
}
