import { RULES } from './first-layout.ts'
import { layGreedily } from './greedy.ts'
import type { Job } from './job.ts'
import { boardOrders, ORDER_COUNT, sortedPieces } from './order.ts'
import { boardsTaken, compareScores, type Packing, type Sheet, scoreOf } from './packing.ts'
import { randomFrom } from './random.ts'

/** Boards emptied at once. */
const MOST_BOARDS_EMPTIED = 4
/** Share by which a size may be misjudged when pieces are sorted anew. */
const SORT_NOISE = 0.5
/** Loss of evenness that is accepted, so that the search does not stick. */
const SLACK = 0.02
/** Work of a round besides the laying, in pieces squared: always, for each kind of board, for each board taken (measured). */
const ROUND_WORK = 500
const KIND_WORK = 30
const SHEET_WORK = 10

interface Round {
  before: Packing
  after: Packing
  kept: Sheet[]
  /** How many pieces were laid anew. */
  pieces: number
}

const pick = (count: number, random: () => number): number =>
  Math.min(count - 1, Math.floor(random() * count))

/** The emptiest board or any board, and some others, by index. */
function boardsToEmpty(job: Job, sheets: readonly Sheet[], random: () => number): Set<number> {
  const fill = (sheet: Sheet) =>
    sheet.usedUm2 / (job.boards[sheet.board]!.lengthUm * job.boards[sheet.board]!.widthUm)
  const emptiest = sheets.reduce(
    (least, sheet, index) => (fill(sheet) < fill(sheets[least]!) ? index : least),
    0,
  )
  const chosen = new Set([random() < 0.6 ? emptiest : pick(sheets.length, random)])
  const wanted = Math.min(sheets.length, 1 + pick(MOST_BOARDS_EMPTIED, random))
  while (chosen.size < wanted) chosen.add(pick(sheets.length, random))
  return chosen
}

function shuffled(order: readonly number[], random: () => number): number[] {
  return order
    .map((board) => ({ board, key: random() }))
    .sort((a, b) => a.key - b.key)
    .map(({ board }) => board)
}

/** Draws of boards that are tried before any are taken. */
const DRAWS = 6

/** Boards drawn at random until they hold an area, when they are cheaper than a price; else undefined. */
function cheaperBoards(
  job: Job,
  onHand: readonly number[],
  areaUm2: number,
  price: number,
  random: () => number,
): number[] | undefined {
  const some = onHand.flatMap((count, kind) => (count > 0 ? [kind] : []))
  for (let draw = 0; draw < DRAWS; draw++) {
    const kinds = [...some]
    const taken = onHand.map(() => 0)
    let [missing, spent] = [areaUm2, 0]
    while (missing > 0 && spent < price && kinds.length > 0) {
      const at = pick(kinds.length, random)
      const kind = kinds[at]!
      taken[kind]!++
      if (taken[kind] === onHand[kind]) kinds.splice(at, 1)
      missing -= job.boards[kind]!.lengthUm * job.boards[kind]!.widthUm
      spent += job.boards[kind]!.price
    }
    if (missing <= 0 && spent < price) return taken
  }
  return undefined
}

/** Empties some boards and fills boards again by a rule drawn at random, now and then on cheaper boards only. */
function recreated(job: Job, packing: Packing, orders: readonly number[][], random: () => number): Round {
  const chosen = boardsToEmpty(job, packing.sheets, random)
  const emptied = packing.sheets.filter((_, index) => chosen.has(index))
  const kept = packing.sheets.filter((_, index) => !chosen.has(index))
  const taken = boardsTaken(job, kept)
  const onHand = job.boards.map((board, kind) => board.count - taken[kind]!)
  const pieces = [...emptied.flatMap((sheet) => sheet.pieces), ...packing.left]
  const order = sortedPieces(job, pieces, pick(ORDER_COUNT, random), SORT_NOISE * random(), random)
  const boards = random() < 0.5 ? orders[pick(orders.length, random)]! : shuffled(orders[0]!, random)
  const areaUm2 = pieces.reduce((sum, piece) => sum + job.areaUm2[piece]!, 0)
  const price = emptied.reduce((sum, sheet) => sum + job.boards[sheet.board]!.price, 0)
  const cheaper = job.boards.length === 1 ? undefined : cheaperBoards(job, onHand, areaUm2, price, random)
  const after = layGreedily(job, order, boards, cheaper ?? onHand, RULES[pick(RULES.length, random)]!)
  return { before: { sheets: emptied, left: packing.left }, after, kept, pieces: pieces.length }
}

/** What a round costs, in pieces squared, that has so many pieces laid anew beside so many boards kept. */
export const roundWork = (job: Pick<Job, 'boards'>, pieces: number, kept: number): number =>
  ROUND_WORK + KIND_WORK * job.boards.length + SHEET_WORK * kept + pieces ** 2

/**
 * Ruin and recreate on whole boards: the contents of a few boards are laid anew, and the result is kept when it
 * is no worse. Squared fills draw the parts together until a board falls empty.
 * After J. Gardeyn & T. Wauters, A goal-driven ruin and recreate heuristic (arXiv 2508.19306), much simplified.
 * @param work    how much to try, in pieces squared; the same work and seed give the same layout
 * @param enough  price below which nothing can be (stop there)
 */
export function improved(job: Job, start: Packing, work: number, seed: number, enough: number): Packing {
  const random = randomFrom(seed)
  const orders = boardOrders(job)
  let best = start
  let now = start
  let bestScore = scoreOf(job, start)
  for (let done = 0; done < work; ) {
    if (bestScore.leftUm2 === 0 && bestScore.price <= enough) return best
    const { before, after, kept, pieces } = recreated(job, now, orders, random)
    done += roundWork(job, pieces, kept.length)
    if (compareScores(scoreOf(job, after), scoreOf(job, before), SLACK * random()) > 0) continue
    now = { sheets: [...kept, ...after.sheets], left: after.left }
    const score = scoreOf(job, now)
    if (compareScores(score, bestScore) >= 0) continue
    best = now
    bestScore = score
  }
  return best
}
