import { boxPages } from './box-page.ts'
import { cuttingPages, diagramPages } from './cutting-pages.ts'
import type { Drawing } from './drawing.ts'
import { dxfOf } from './dxf.ts'
import { type Drawn, type Job, titled } from './job.ts'
import { panelPages } from './panel-pages.ts'
import { panelsSideBySide } from './panels-side-by-side.ts'
import type { PaperSize } from './paper.ts'
import { stacked } from './stacked.ts'
import { svgOf } from './svg.ts'
import { templatePages } from './template-pages.ts'

/** Pictures are laid out for this paper; they are sized in millimetres, so either prints. */
const PICTURE_PAPER: PaperSize = 'A4'

/** A picture of what there is to draw; null when there is nothing. */
const pictureOf = (pages: readonly Drawing[], title: string, id: string): string | null =>
  pages.length === 0 ? null : svgOf(stacked(pages, title), id)

/**
 * The cutting diagram of one board, or of all of them one below the other.
 * @param index  which of `sheets`, from 0; all when left out
 * @returns null when no such board is cut
 */
export function cuttingSvg(answer: Drawn, job: Job = {}, index?: number): string | null {
  const indices = index === undefined ? answer.sheets.keys() : [index]
  const pages = [...indices].flatMap((sheet) => diagramPages(answer, job, sheet, PICTURE_PAPER))
  return pictureOf(pages, titled('Cutting diagrams', job), 'cutting')
}

/**
 * Panels with their dimensions, one below the other.
 * @param id  name of one panel; all when left out
 * @returns null when there is no such panel
 */
export function panelsSvg(answer: Pick<Drawn, 'panels'>, job: Job = {}, id?: string): string | null {
  const panels = answer.panels.filter((panel) => id === undefined || panel.id === id)
  return pictureOf(panelPages({ panels }, job, PICTURE_PAPER), titled('Panels', job), 'panels')
}

/** The box from the front and taken apart; null for plain parts. */
export const boxSvg = (answer: Pick<Drawn, 'panels'>, job: Job = {}): string | null =>
  pictureOf(boxPages(answer, job, PICTURE_PAPER), titled('The box', job), 'box')

/**
 * Everything for the workshop wall: cutting diagrams with the sawing order, the box, panels, drilling templates at
 * true size.
 * @returns null when there is nothing to draw
 */
export async function cutListPdf(
  answer: Drawn,
  job: Job = {},
  paper: PaperSize = 'A4',
): Promise<Uint8Array | null> {
  const pages = [
    ...cuttingPages(answer, job, paper),
    ...boxPages(answer, job, paper),
    ...panelPages(answer, job, paper),
    ...templatePages(answer, job, paper),
  ]
  if (pages.length === 0) return null
  // Loaded when a sheet is printed: it would more than double the time that the service takes to start.
  const { pdfOf } = await import('./pdf.ts')
  return pdfOf(pages, titled('Cut list', job))
}

/**
 * Panels at true size for a laser or a router.
 * @param id  name of one panel; all when left out, side by side
 * @returns null when there is no such panel
 */
export function panelsDxf({ panels }: Pick<Drawn, 'panels'>, id?: string): string | null {
  const drawn = panels.filter((panel) => id === undefined || panel.id === id)
  return drawn.length === 0 ? null : dxfOf(panelsSideBySide(drawn))
}
