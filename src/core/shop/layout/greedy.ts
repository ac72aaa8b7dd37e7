import type { Job } from './job.ts'
import type { Packing, Sheet } from './packing.ts'

/** How good a free rectangle is for a piece, from what would be left of both sides; less is better. */
type Choice = (restLength: number, restWidth: number, length: number, width: number) => number

/** Whether the first cut beside a new piece runs across the board. */
type Split = (restLength: number, restWidth: number, length: number, width: number) => boolean

/** Ways to choose a free rectangle, after J. Jylanki, A thousand ways to pack the bin, 2010. */
export const CHOICES: readonly Choice[] = [
  (dl, dw) => Math.min(dl, dw),
  (dl, dw, l, w) => (l + dl) * (w + dw) - l * w,
  (dl, dw) => Math.max(dl, dw),
  (dl, dw, l, w) => (dl === 0 || dw === 0 ? -1 : 0) + ((l + dl) * (w + dw) - l * w) * 1e-16,
]

/** Ways to divide what is left beside a piece, same source. */
export const SPLITS: readonly Split[] = [
  (dl, dw) => dl >= dw,
  (dl, dw) => dl < dw,
  (dl, dw, l, w) => dl * w >= dw * l,
  (dl, dw, l, w) => dl * w < dw * l,
  () => true,
  () => false,
]

export interface GreedyRule {
  choice: Choice
  split: Split
  /** true: the first board that takes the piece; false: the best place on any open board. */
  firstBoard: boolean
}

/** Free rectangles of all open boards, side by side in plain arrays. */
interface Free {
  sheet: number[]
  x: number[]
  y: number[]
  length: number[]
  width: number[]
}

/** Free rectangles that take nothing any more are not kept. */
function keep(free: Free, least: number, sheet: number, x: number, y: number, length: number, width: number) {
  if (length < least || width < least) return
  free.sheet.push(sheet)
  free.x.push(x)
  free.y.push(y)
  free.length.push(length)
  free.width.push(width)
}

function drop(free: Free, index: number) {
  const last = free.sheet.length - 1
  free.sheet[index] = free.sheet[last]!
  free.x[index] = free.x[last]!
  free.y[index] = free.y[last]!
  free.length[index] = free.length[last]!
  free.width[index] = free.width[last]!
  free.sheet.pop()
  free.x.pop()
  free.y.pop()
  free.length.pop()
  free.width.pop()
}

/** The best place found so far for one piece; index -1 for none. */
interface Place {
  index: number
  turned: boolean
  score: number
  sheet: number
}

/** Looks through all free rectangles for a piece that lies one way. The inner loop makes no objects. */
function scan(
  job: Job,
  sheets: readonly Sheet[],
  free: Free,
  piece: number,
  turned: boolean,
  rule: GreedyRule,
  best: Place,
) {
  const length = turned ? job.widthUm[piece]! : job.lengthUm[piece]!
  const width = turned ? job.lengthUm[piece]! : job.widthUm[piece]!
  const row = piece * job.boards.length
  const way = turned ? 2 : 1
  for (let index = 0; index < free.sheet.length; index++) {
    const restLength = free.length[index]! - length
    const restWidth = free.width[index]! - width
    const sheet = rule.firstBoard ? free.sheet[index]! : 0
    const may = job.ways[row + sheets[free.sheet[index]!]!.board]! & way
    if (restLength < 0 || restWidth < 0 || may === 0 || sheet > best.sheet) continue
    const score = rule.choice(restLength, restWidth, length, width)
    if (sheet === best.sheet && score >= best.score) continue
    best.index = index
    best.turned = turned
    best.score = score
    best.sheet = sheet
  }
}

/** Best place for the piece, unturned where both ways are as good. */
function bestPlace(job: Job, sheets: readonly Sheet[], free: Free, piece: number, rule: GreedyRule): Place {
  const best = { index: -1, turned: false, score: Infinity, sheet: Infinity }
  scan(job, sheets, free, piece, false, rule, best)
  const isSquare = job.lengthUm[piece] === job.widthUm[piece]
  if (!isSquare || best.index < 0) scan(job, sheets, free, piece, true, rule, best)
  return best
}

function put(job: Job, sheets: Sheet[], free: Free, piece: number, place: Place, rule: GreedyRule) {
  const { index, turned } = place
  const l = turned ? job.widthUm[piece]! : job.lengthUm[piece]!
  const w = turned ? job.lengthUm[piece]! : job.widthUm[piece]!
  const at = free.sheet[index]!
  const x = free.x[index]!
  const y = free.y[index]!
  const restLength = free.length[index]! - l
  const restWidth = free.width[index]! - w
  drop(free, index)
  const sheet = sheets[at]!
  sheet.pieces.push(piece)
  sheet.xUm.push(x)
  sheet.yUm.push(y)
  sheet.turned.push(turned)
  sheet.usedUm2 += l * w
  const across = rule.split(restLength, restWidth, l, w)
  keep(free, job.leastSideUm, at, x + l, y, restLength, across ? w + restWidth : w)
  keep(free, job.leastSideUm, at, x, y + w, across ? l : l + restLength, restWidth)
}

/** Opens the first kind of board in the order that takes the piece and is still on hand. */
function open(
  job: Job,
  sheets: Sheet[],
  free: Free,
  piece: number,
  order: readonly number[],
  onHand: number[],
) {
  const kinds = job.boards.length
  const kind = order.find((board) => onHand[board]! > 0 && job.ways[piece * kinds + board]! > 0)
  if (kind === undefined) return false
  onHand[kind]!--
  const { lengthUm, widthUm } = job.boards[kind]!
  sheets.push({ board: kind, pieces: [], xUm: [], yUm: [], turned: [], usedUm2: 0, freeUm2: 0 })
  keep(free, 0, sheets.length - 1, 0, 0, lengthUm, widthUm)
  return true
}

/**
 * Lays pieces one after the other into free rectangles that only cuts from edge to edge make.
 * @param pieces      indexes of the pieces, in the order they are laid
 * @param boardOrder  kinds of board, in the order they are opened
 * @param boardsOnHand  how many of each kind there are
 */
export function layGreedily(
  job: Job,
  pieces: ArrayLike<number>,
  boardOrder: readonly number[],
  boardsOnHand: readonly number[],
  rule: GreedyRule,
): Packing {
  const sheets: Sheet[] = []
  const left: number[] = []
  const onHand = [...boardsOnHand]
  const free: Free = { sheet: [], x: [], y: [], length: [], width: [] }
  for (let i = 0; i < pieces.length; i++) {
    const piece = pieces[i]!
    let place = bestPlace(job, sheets, free, piece, rule)
    if (place.index < 0 && open(job, sheets, free, piece, boardOrder, onHand)) {
      place = bestPlace(job, sheets, free, piece, rule)
    }
    if (place.index < 0) left.push(piece)
    else put(job, sheets, free, piece, place, rule)
  }
  for (let index = 0; index < free.sheet.length; index++) {
    const sheet = sheets[free.sheet[index]!]!
    sheet.freeUm2 = Math.max(sheet.freeUm2, free.length[index]! * free.width[index]!)
  }
  return { sheets, left }
}
