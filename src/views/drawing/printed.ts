import { cutListPdf } from './cut-list-drawings.ts'
import type { Drawn, Job } from './job.ts'
import type { PaperSize } from './paper.ts'

/** Everything that a sheet is printed from, in one piece, so that a thread of its own can be handed it. */
export interface Printing {
  answer: Drawn
  job: Job
  paper: PaperSize
}

/** The sheet of a cut list; null when there is nothing to draw. */
export const printed = ({ answer, job, paper }: Printing): Promise<Uint8Array | null> =>
  cutListPdf(answer, job, paper)
