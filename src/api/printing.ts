import type { Drawn, Job } from '../views/drawing/job.ts'
import type { PaperSize } from '../views/drawing/paper.ts'
import type { Printing } from '../views/drawing/printed.ts'
import type { ViewOptions } from './view-options.ts'

/** The paper that is asked for. */
export const paperOf = ({ paper }: ViewOptions): PaperSize => (paper === 'letter' ? 'Letter' : 'A4')

/** What is printed of an answer; no more of it than that goes to the thread that prints. */
export function printingOf(
  { panels, sheets, notPlaced, cuts, cautions }: Drawn,
  { name, stock, workshop, drivers }: Job,
  options: ViewOptions,
): Printing {
  return {
    answer: { panels, sheets, notPlaced, cuts, cautions },
    job: { name, stock, workshop, drivers },
    paper: paperOf(options),
  }
}
