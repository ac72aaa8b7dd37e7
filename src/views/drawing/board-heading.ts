import { DUST_CAUTION, SAW_CAUTION, STRIP_CAUTION } from '../../core/shop/cautions.ts'
import type { Sheet } from '../../schema/cut-list.ts'
import { figure, plural, sizeSaid } from './figures.ts'
import { boardOf, type Drawn, type Job, kerfOf, titled } from './job.ts'
import type { Heading } from './paper.ts'

/** Cautions that belong beside the plan a saw follows. */
const AT_THE_SAW: readonly string[] = [SAW_CAUTION, STRIP_CAUTION, DUST_CAUTION]

function subtitle(sheet: Sheet, job: Job): string[] {
  const board = boardOf(job, sheet)
  return [
    `board ${sizeSaid(sheet)}${board?.thicknessMm === undefined ? '' : ` × ${figure(board.thicknessMm)}`} mm`,
    plural(sheet.parts.length, 'part'),
    `kerf ${figure(kerfOf(job))} mm`,
    ...(board?.trimMm === undefined || board.trimMm === 0
      ? []
      : [`edges trimmed by ${figure(board.trimMm)} mm`]),
  ]
}

/** The board by its name, and which of several of that name. */
function boardSaid({ stock, index }: Sheet, { sheets }: Drawn): string {
  const count = sheets.filter((sheet) => sheet.stock === stock).length
  return count === 1 ? stock : `${stock} (${index} of ${count})`
}

/** What stands above and below everything about one board, the cautions of the saw with it. */
export const boardHeading = (sheet: Sheet, answer: Drawn, job: Job, title: string): Heading => ({
  title: titled(`${title} of ${boardSaid(sheet, answer)}`, job),
  subtitle: subtitle(sheet, job).join(', '),
  notes: answer.cautions.filter((caution) => AT_THE_SAW.includes(caution)),
})

/** Kinds of part without a board that a note still lists. */
const MOST_SAID = 6

/** The parts that found no board, in one sentence; none when all did. */
export function notPlacedSaid({ notPlaced }: Drawn): string[] {
  if (notPlaced.length === 0) return []
  const said = notPlaced
    .slice(0, MOST_SAID)
    .map(
      ({ id, count, smallestBoardMm }) =>
        `${count} × ${id}, which a board of ${sizeSaid(smallestBoardMm)} mm would take`,
    )
  const more = notPlaced.length > MOST_SAID ? [`${notPlaced.length - MOST_SAID} further kinds`] : []
  return [`Found no board: ${[...said, ...more].join('; ')}.`]
}
