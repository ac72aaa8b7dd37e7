import type { Cut, Sheet } from '../../schema/cut-list.ts'
import { boardHeading } from './board-heading.ts'
import type { Drawing } from './drawing.ts'
import { figure, sizeSaid } from './figures.ts'
import { type Drawn, type Job, kerfOf } from './job.ts'
import { type PaperSize, upright } from './paper.ts'
import { tablePages } from './table-pages.ts'

/** What a cut takes off, or where the fence stands. */
function settingSaid({ direction, atMm, piece, trim }: Cut, kerfMm: number): string {
  const [start, end] =
    direction === 'across' ? [piece.xMm, piece.xMm + piece.lengthMm] : [piece.yMm, piece.yMm + piece.widthMm]
  if (!trim) return figure(atMm - start)
  const nearEdge = atMm - start < end - atMm
  const side = direction === 'across' ? (nearEdge ? 'left' : 'right') : nearEdge ? 'lower' : 'upper'
  return `trim ${figure(nearEdge ? atMm + kerfMm - start : end - atMm)} off the ${side} edge`
}

const cutRow = (cut: Cut, kerfMm: number): string[] => [
  String(cut.step),
  cut.direction,
  settingSaid(cut, kerfMm),
  sizeSaid(cut.piece),
  cut.leaves.join(', '),
]

const COLUMNS = [
  { title: 'cut', widthMm: 12 },
  { title: 'saw runs', widthMm: 20 },
  { title: 'from the left or lower edge', widthMm: 50 },
  { title: 'of the piece', widthMm: 32 },
  { title: 'leaves', widthMm: 76 },
]

/** The cuts of a board as a table to follow at the saw. */
export const sawingOrder = (
  sheet: Sheet,
  cuts: readonly Cut[],
  answer: Drawn,
  job: Job,
  size: PaperSize,
): Drawing[] =>
  tablePages(
    upright(size),
    boardHeading(sheet, answer, job, 'Sawing order'),
    COLUMNS,
    cuts.map((cut) => cutRow(cut, kerfOf(job))),
  )
