import { DRILL_CAUTION } from '../../core/shop/cautions.ts'
import type { Panel } from '../../schema/panel.ts'
import type { Drawing, Rectangle, Shape } from './drawing.ts'
import { figure, plural, sizeSaid } from './figures.ts'
import { HOLE_COLUMNS, holeRows } from './hole-rows.ts'
import { type Drawn, type Job, titled } from './job.ts'
import { bandedSaid } from './missing-bands.ts'
import { panelView } from './panel-view.ts'
import { type Heading, type PaperSize, page, roomOn, upright } from './paper.ts'
import { scaleSaid } from './round-scale.ts'
import { ruledTable } from './ruled-table.ts'
import { at, text } from './shapes.ts'
import { tablePages } from './table-pages.ts'
import { shortened, wrapped } from './type-width.ts'

const SIZES = 'Sizes in mm.'
const SEEN = `Seen from outside. x and y run from the lower left corner. ${SIZES}`
const BANDS = 'A thick stroke along an edge: it gets a band; sizes and places are those with the band on.'

const notesFor = (panels: readonly Panel[]): string[] => [
  ...(panels.some(({ holes }) => holes.length > 0) ? [SEEN, DRILL_CAUTION] : [SIZES]),
  ...(panels.some(({ bandedEdges }) => bandedEdges.length > 0) ? [BANDS] : []),
]

const thickness = ({ thicknessMm }: Panel): string =>
  thicknessMm === null ? '' : ` × ${figure(thicknessMm)}`

/** From where a brace is measured. */
const STANDS = {
  level: 'above the inner floor',
  upright: 'from the inner left wall',
  'behind-front': 'behind the inside of the front',
} satisfies Record<NonNullable<Panel['stands']>['lies'], string>

function panelSaid(panel: Panel): string {
  const grain = panel.grain === 'any' ? [] : [`grain along the ${panel.grain}`]
  const bands = panel.bandedEdges.length === 0 ? [] : [`band on ${bandedSaid(panel)}`]
  const sawn = { lengthMm: panel.sawLengthMm, widthMm: panel.sawWidthMm }
  const less = sawn.lengthMm < panel.lengthMm || sawn.widthMm < panel.widthMm
  return [
    `${sizeSaid(panel)}${thickness(panel)} mm`,
    ...(less ? [`sawn ${sizeSaid(sawn)}`] : []),
    plural(panel.count, 'piece'),
    ...grain,
    ...bands,
    ...(panel.stands === null
      ? []
      : [`its middle ${figure(panel.stands.atMm)} ${STANDS[panel.stands.lies]}`]),
  ].join(', ')
}

/** Least height of a view above its table. */
const VIEW_MM = 110

/** A panel with holes: its view, and below it the table of holes, which may run on. */
function drilledPages(panel: Panel, job: Job, size: PaperSize): Drawing[] {
  const paper = upright(size)
  const heading: Heading = {
    title: titled(`Panel ${panel.id}`, job),
    subtitle: panelSaid(panel),
    notes: notesFor([panel]),
  }
  const room = roomOn(paper, heading)
  const rows = holeRows(panel.holes)
  const whole = ruledTable(at(0, 0), HOLE_COLUMNS, rows, Infinity).heightMm
  const tableMm = Math.min(whole, room.widthMm - VIEW_MM)
  const view = panelView(panel, { ...room, yMm: room.yMm + tableMm, widthMm: room.widthMm - tableMm })
  const first = ruledTable(at(room.xMm, room.yMm + tableMm), HOLE_COLUMNS, rows, tableMm)
  const told = { ...heading, subtitle: `${heading.subtitle}, ${scaleSaid(view.times)}` }
  return [
    page(paper, told, [{ shapes: [...view.shapes, ...first.shapes] }]),
    ...tablePages(paper, heading, HOLE_COLUMNS, first.left),
  ]
}

const COLUMNS = 2
const ROWS = 4
/** Room for the name of a panel and two lines about it. */
const NAME_MM = 13
const SAID_MM = 2.4
const SAID_LINES = 2

/** A panel without holes in its cell of a shared page. */
function cellShapes(panel: Panel, cell: Rectangle): Shape[] {
  const view = panelView(panel, { ...cell, widthMm: cell.widthMm - NAME_MM })
  const width = cell.lengthMm - 2
  const top = cell.yMm + cell.widthMm
  const said = `${panelSaid(panel)}, ${scaleSaid(view.times)}`
  return [
    text(at(cell.xMm + 1, top - 4), shortened(panel.id, width, 3.4, 'heading'), {
      sizeMm: 3.4,
      role: 'heading',
    }),
    ...wrapped(said, width, SAID_MM)
      .slice(0, SAID_LINES)
      .map((words, index) => text(at(cell.xMm + 1, top - 8 - 3.1 * index), words, { sizeMm: SAID_MM })),
    ...view.shapes,
  ]
}

/** Panels without holes, several on a page. */
function plainPages(panels: readonly Panel[], job: Job, size: PaperSize): Drawing[] {
  const paper = upright(size)
  const each = COLUMNS * ROWS
  const count = Math.ceil(panels.length / each)
  return Array.from({ length: count }, (_, index) => {
    const shown = panels.slice(index * each, (index + 1) * each)
    const heading: Heading = {
      title: titled('Panels', job),
      subtitle: shown.map(({ id }) => id).join(', '),
      notes: notesFor(shown),
    }
    const room = roomOn(paper, heading)
    const [lengthMm, widthMm] = [room.lengthMm / COLUMNS, room.widthMm / ROWS]
    const shapes = shown.flatMap((panel, place) => {
      const [column, row] = [place % COLUMNS, Math.floor(place / COLUMNS)]
      const [xMm, yMm] = [room.xMm + column * lengthMm, room.yMm + room.widthMm - (row + 1) * widthMm]
      return cellShapes(panel, { xMm, yMm, lengthMm, widthMm })
    })
    return page(paper, heading, [{ shapes }])
  })
}

/** Every panel with its dimensions: those with holes on pages of their own, the others together. */
export function panelPages({ panels }: Pick<Drawn, 'panels'>, job: Job, size: PaperSize): Drawing[] {
  const drilled = panels.filter(({ holes }) => holes.length > 0)
  const plain = panels.filter(({ holes }) => holes.length === 0)
  return [...drilled.flatMap((panel) => drilledPages(panel, job, size)), ...plainPages(plain, job, size)]
}
