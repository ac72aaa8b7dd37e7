import type { Drawn, Job } from '../views/drawing/job.ts'
import type { Printing } from '../views/drawing/printed.ts'
import type { ViewOptions } from './view-options.ts'

/** What is printed of an answer; no more of it than that goes to the thread that prints. */
export function printingOf(
  { panels, sheets, notPlaced, cuts, cautions }: Drawn,
  { name, stock, workshop, drivers }: Job,
  { paper }: ViewOptions,
): Printing {
  return {
    answer: { panels, sheets, notPlaced, cuts, cautions },
    job: { name, stock, workshop, drivers },
    paper: paper === 'letter' ? 'Letter' : 'A4',
  }
}
