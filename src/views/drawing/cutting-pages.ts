import type { Cut } from '../../schema/cut-list.ts'
import { notPlacedSaid } from './board-heading.ts'
import { cuttingDiagram } from './cutting-diagram.ts'
import type { Drawing } from './drawing.ts'
import { type Drawn, type Job, titled } from './job.ts'
import { type PaperSize, page, upright } from './paper.ts'
import { sawingOrder } from './sawing-order.ts'

const cutsOn = (answer: Drawn, index: number): Cut[] => answer.cuts.filter(({ sheet }) => sheet === index)

/** The cutting diagram of one board; nothing for a board that is not cut. */
export function diagramPages(answer: Drawn, job: Job, index: number, size: PaperSize): Drawing[] {
  const sheet = answer.sheets[index]
  return sheet === undefined ? [] : cuttingDiagram({ sheet, cuts: cutsOn(answer, index), answer, job }, size)
}

/** A page that says why there is no diagram, where no board takes any part. */
const nothingCut = (answer: Drawn, job: Job, size: PaperSize): Drawing[] =>
  notPlacedSaid(answer).map((said) =>
    page(
      upright(size),
      { title: titled('Nothing to cut', job), subtitle: 'no board takes any part', notes: [said] },
      [],
    ),
  )

/** Diagram and sawing order of every board. */
export const cuttingPages = (answer: Drawn, job: Job, size: PaperSize): Drawing[] =>
  answer.sheets.length === 0
    ? nothingCut(answer, job, size)
    : answer.sheets.flatMap((sheet, index) => [
        ...diagramPages(answer, job, index, size),
        ...sawingOrder(sheet, cutsOn(answer, index), answer, job, size),
      ])
