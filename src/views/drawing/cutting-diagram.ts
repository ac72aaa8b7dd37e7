import type { Cut, Sheet } from '../../schema/cut-list.ts'
import { boardDrawing, type Key } from './board-drawing.ts'
import { boardHeading, notPlacedSaid } from './board-heading.ts'
import { doubleArrow } from './dimension.ts'
import type { Drawing, Rectangle, Shape } from './drawing.ts'
import { boardOf, type Drawn, type Job, kerfOf } from './job.ts'
import { type Heading, onItsSide, type Paper, type PaperSize, page, roomOn, upright } from './paper.ts'
import { roundScale, scaleSaid } from './round-scale.ts'
import { at, text } from './shapes.ts'
import { tablePages } from './table-pages.ts'

const LEGEND =
  'White: parts. Wide hatching: offcuts to keep. Close hatching: waste. Black: the saw kerf. Ringed numbers: cuts in sawing order, each from edge to edge of the piece at hand. Sizes in mm.'

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
/** More small parts than this are listed on a page of their own. */
const MOST_KEYS_BELOW = 24

interface Board {
  sheet: Sheet
  cuts: readonly Cut[]
  answer: Drawn
  job: Job
}

/** The board in what its heading leaves of the paper. */
function boardOn(paper: Paper, heading: Heading, { sheet, cuts, answer, job }: Board) {
  const room = roomOn(paper, heading)
  const inner = { lengthMm: room.lengthMm - 2 * EDGE_MM, widthMm: room.widthMm - FOOT_MM - EDGE_MM }
  const times = roundScale(sheet, inner)
  const [lengthMm, widthMm] = [sheet.lengthMm / times, sheet.widthMm / times]
  const origin = at(
    room.xMm + (room.lengthMm - lengthMm) / 2,
    room.yMm + FOOT_MM + (inner.widthMm - widthMm) / 2,
  )
  const plan = { sheet, cuts, panels: answer.panels, kerfMm: kerfOf(job) }
  const { shapes, keys } = boardDrawing(plan, { origin, scale: 1 / times })
  return { shapes: [...shapes, ...grainShapes(sheet, job, { ...origin, lengthMm, widthMm })], keys, times }
}

const withKeys = (heading: Heading, keys: readonly Key[]): Heading =>
  keys.length === 0
    ? heading
    : {
        ...heading,
        notes: [
          keys.length > MOST_KEYS_BELOW
            ? 'Letters stand for small parts, which are listed on the page that follows.'
            : `Small parts: ${keys.map(([letter, name, size]) => `${letter} = ${name}, ${size}`).join('; ')}.`,
          ...heading.notes,
        ],
      }

const KEY_COLUMNS = [
  { title: 'letter', widthMm: 20 },
  { title: 'part', widthMm: 110 },
  { title: 'size', widthMm: 60 },
]

/** The board with its parts and numbered cuts, and the list of its small parts where it is long. */
export function cuttingDiagram(board: Board, size: PaperSize): Drawing[] {
  const { sheet, answer, job } = board
  const paper = sheet.widthMm > sheet.lengthMm ? upright(size) : onItsSide(size)
  const plain = boardHeading(sheet, answer, job, 'Cutting diagram')
  const noted = { ...plain, notes: [...notPlacedSaid(answer), LEGEND, ...plain.notes] }
  const first = boardOn(paper, noted, board)
  // The list of small parts takes room from the board, so the board is drawn again beside it.
  const heading = withKeys(noted, first.keys)
  const { shapes, keys, times } = first.keys.length === 0 ? first : boardOn(paper, heading, board)
  const told = { ...withKeys(noted, keys), subtitle: `${plain.subtitle}, ${scaleSaid(times)}` }
  const list = { ...plain, title: `Small parts: ${plain.title}` }
  return [
    page(paper, told, [{ shapes }]),
    ...(keys.length > MOST_KEYS_BELOW ? tablePages(upright(size), list, KEY_COLUMNS, keys) : []),
  ]
}
