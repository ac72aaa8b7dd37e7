import { CHOICES, type GreedyRule, layGreedily, SPLITS } from './greedy.ts'
import type { Job } from './job.ts'
import { boardOrders, ORDER_COUNT, sortedPieces } from './order.ts'
import { compareScores, type Packing, scoreOf } from './packing.ts'

/** Every way to choose, split and open boards, in a fixed order. */
export const RULES: readonly GreedyRule[] = [true, false].flatMap((firstBoard) =>
  CHOICES.flatMap((choice) => SPLITS.map((split) => ({ choice, split, firstBoard }))),
)

/** Work allowed for the first layout, counted in pieces squared: some tenths of a second at most. */
const FIRST_LAYOUT_WORK = 6e6
const LEAST_TRIES = 6

const largestFree = (packing: Packing): number =>
  packing.sheets.reduce((most, sheet) => Math.max(most, sheet.freeUm2), 0)

/** Below zero when `a` is better; equal layouts differ by their largest free rectangle. */
export function comparePackings(job: Job, a: Packing, b: Packing): number {
  const [first, second] = [scoreOf(job, a), scoreOf(job, b)]
  const stock = compareScores({ ...first, evenness: 0 }, { ...second, evenness: 0 })
  return stock || largestFree(b) - largestFree(a)
}

/** Every different sequence of sizes that the sort orders give: equal parts make many of them one. */
function sequences(job: Job, pieces: readonly number[]): number[][] {
  const known = new Map<string, number[]>()
  for (let order = 0; order < ORDER_COUNT; order++) {
    const sorted = sortedPieces(job, pieces, order, 0, () => 0)
    known.set(sorted.map((piece) => job.partOf[piece]).join(), sorted)
  }
  return [...known.values()]
}

/** The best of all rules, sort orders and board orders, as far as the counted work allows. */
export function firstLayout(job: Job): Packing {
  const pieces = Array.from(job.partOf, (_, piece) => piece)
  const onHand = job.boards.map((board) => board.count)
  const orders = sequences(job, pieces)
  const boards = boardOrders(job)
  const tries = RULES.flatMap((rule) =>
    boards.flatMap((open) => orders.map((sorted) => ({ rule, open, sorted }))),
  )
  const affordable = Math.max(LEAST_TRIES, Math.floor(FIRST_LAYOUT_WORK / pieces.length ** 2))
  let best: Packing = { sheets: [], left: pieces }
  for (const { rule, open, sorted } of tries.slice(0, affordable)) {
    const packing = layGreedily(job, sorted, open, onHand, rule)
    if (comparePackings(job, packing, best) < 0) best = packing
  }
  return best
}
