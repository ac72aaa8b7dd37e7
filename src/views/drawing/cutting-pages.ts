import { DUST_CAUTION, SAW_CAUTION, STRIP_CAUTION } from '../../core/shop/cautions.ts'
import type { Cut, Sheet } from '../../schema/cut-list.ts'
import { boardDrawing } from './board-drawing.ts'
import { doubleArrow } from './dimension.ts'
import type { Drawing, Rectangle, Shape } from './drawing.ts'
import { figure, plural, sizeSaid } from './figures.ts'
import { boardOf, type Drawn, type Job, kerfOf, titled } from './job.ts'
import { type Heading, onItsSide, type PaperSize, page, roomOn, upright } from './paper.ts'
import { roundScale, scaleSaid } from './round-scale.ts'
import { ruledTable } from './ruled-table.ts'
import { at, text } from './shapes.ts'

/** Cautions that belong beside the plan a saw follows. */
const AT_THE_SAW: readonly string[] = [SAW_CAUTION, STRIP_CAUTION, DUST_CAUTION]

const LEGEND =
  'White: parts. Wide hatching: offcuts to keep. Close hatching: waste. Black: the saw kerf. Ringed numbers: cuts in sawing order, each from edge to edge of the piece at hand. Sizes in mm.'

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

const headingOf = (sheet: Sheet, { cautions }: Drawn, job: Job, title: string): Heading => ({
  title: titled(`${title} of ${sheet.stock} ${sheet.index}`, job),
  subtitle: subtitle(sheet, job).join(', '),
  notes: cautions.filter((caution) => AT_THE_SAW.includes(caution)),
})

function notPlacedSaid({ notPlaced }: Drawn): string[] {
  if (notPlaced.length === 0) return []
  const said = notPlaced.map(
    ({ id, count, smallestBoardMm }) =>
      `${count} × ${id}, which a board of ${sizeSaid(smallestBoardMm)} mm would take`,
  )
  return [`Found no board: ${said.join('; ')}.`]
}

/** The grain of the board, an arrow below it. */
function grainShapes(sheet: Sheet, job: Job, board: Rectangle): Shape[] {
  const grain = boardOf(job, sheet)?.grain ?? 'none'
  if (grain === 'none') return []
  const [xMm, yMm] = [board.xMm, board.yMm - 4]
  const arrow =
    grain === 'length'
      ? doubleArrow(at(xMm + 2, yMm + 1), at(xMm + 18, yMm + 1))
      : doubleArrow(at(xMm + 10, yMm - 2), at(xMm + 10, yMm + 3))
  return [
    ...arrow,
    text(at(xMm + 21, yMm), `grain along the ${grain} of the board; parts with an arrow must follow it`),
  ]
}

const FOOT_MM = 10
/** Room for numbers of cuts that begin at the edge of the board. */
const EDGE_MM = 2.5

/** The board with its parts and numbered cuts. */
function diagram(sheet: Sheet, cuts: readonly Cut[], answer: Drawn, job: Job, size: PaperSize): Drawing {
  const paper = sheet.widthMm > sheet.lengthMm ? upright(size) : onItsSide(size)
  const plain = headingOf(sheet, answer, job, 'Cutting diagram')
  const heading = { ...plain, notes: [...notPlacedSaid(answer), LEGEND, ...plain.notes] }
  const room = roomOn(paper, heading)
  const inner = { lengthMm: room.lengthMm - 2 * EDGE_MM, widthMm: room.widthMm - FOOT_MM - EDGE_MM }
  const times = roundScale(sheet, inner)
  const scale = 1 / times
  const origin = at(
    room.xMm + (room.lengthMm - scale * sheet.lengthMm) / 2,
    room.yMm + FOOT_MM + (inner.widthMm - scale * sheet.widthMm) / 2,
  )
  const drawn = boardDrawing({ sheet, cuts, panels: answer.panels, kerfMm: kerfOf(job) }, { origin, scale })
  const board = { ...origin, lengthMm: scale * sheet.lengthMm, widthMm: scale * sheet.widthMm }
  const told = { ...heading, subtitle: `${heading.subtitle}, ${scaleSaid(times)}` }
  const keys = drawn.keys.length === 0 ? [] : [`Small parts: ${drawn.keys.join('; ')}.`]
  return page(paper, { ...told, notes: [...keys, ...told.notes] }, [
    { shapes: [...drawn.shapes, ...grainShapes(sheet, job, board)] },
  ])
}

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
  cut.leaves.length === 0 ? '' : cut.leaves.join(', '),
]

const COLUMNS = [
  { title: 'cut', widthMm: 12 },
  { title: 'saw runs', widthMm: 20 },
  { title: 'from the left or lower edge', widthMm: 50 },
  { title: 'of the piece', widthMm: 32 },
  { title: 'leaves', widthMm: 76 },
]

/** The cuts of a board as a table to follow at the saw, on as many pages as it takes. */
function order(sheet: Sheet, cuts: readonly Cut[], answer: Drawn, job: Job, size: PaperSize): Drawing[] {
  const heading = headingOf(sheet, answer, job, 'Sawing order')
  const paper = upright(size)
  const room = roomOn(paper, heading)
  const pages: Drawing[] = []
  let left: readonly (readonly string[])[] = cuts.map((cut) => cutRow(cut, kerfOf(job)))
  while (left.length > 0) {
    const table = ruledTable(at(room.xMm, room.yMm + room.widthMm), COLUMNS, left, room.widthMm)
    pages.push(page(paper, heading, [{ shapes: table.shapes }]))
    left = table.left
  }
  return pages
}

const cutsOn = (answer: Drawn, index: number): Cut[] => answer.cuts.filter(({ sheet }) => sheet === index)

/** The cutting diagram of one board. */
export function cuttingDiagram(answer: Drawn, job: Job, index: number, size: PaperSize): Drawing[] {
  const sheet = answer.sheets[index]
  return sheet === undefined ? [] : [diagram(sheet, cutsOn(answer, index), answer, job, size)]
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
    : answer.sheets.flatMap((sheet, index) => {
        const cuts = cutsOn(answer, index)
        return [diagram(sheet, cuts, answer, job, size), ...order(sheet, cuts, answer, job, size)]
      })
