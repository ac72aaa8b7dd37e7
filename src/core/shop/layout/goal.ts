import { openWithin } from './boards-within.ts'
import { boardsOpen, type CutTrees, emptyTrees, SPARE, sparesListed } from './cut-tree.ts'
import { clearNode } from './cut-tree-change.ts'
import type { Job } from './job.ts'
import { ORDER_COUNT, sortedPieces } from './order.ts'
import { type Packing, scoreOf } from './packing.ts'
import { randomFrom } from './random.ts'
import { refit } from './refit.ts'
import { sheetsOf } from './sheets-of-trees.ts'

/** Pieces taken out in a round: on average eight, as in the source. */
const MOST_PIECES_OUT = 15
const USUAL_PIECES_OUT = 8
/** Shares of the rounds that empty a whole board, and that take out pieces one by one rather than in groups. */
const BOARD_SHARE = 0.08
const SINGLE_SHARE = 0.5
/** Steps from a piece up its cut tree to the group that is taken out. */
const MOST_LEVELS = 3
/** Rounds looked back by late acceptance. */
const HISTORY = 50
const SORT_NOISE = 0.5
/** Work of a round in pieces squared (measured): always, for each kind of board, for each node copied, for each spare looked at by a piece. */
const ROUND_WORK = 400
const KIND_WORK = 20
const NODE_WORK = 0.3
const LOOK_WORK = 1

const pick = (count: number, random: () => number): number => Math.floor(random() * count)

/** The node some steps above a piece, below the whole board. */
function groupAbove(t: CutTrees, piece: number, steps: number): number {
  let node = piece
  for (let up = steps; up > 0; up--) {
    const parent = t.parent[node]!
    if (parent < 0 || t.parent[parent]! < 0) return node
    node = parent
  }
  return node
}

/** Takes some pieces, groups of pieces or a whole board out; gives the pieces. */
function ruin(t: CutTrees, random: () => number): number[] {
  const out: number[] = []
  if (random() < BOARD_SHARE && boardsOpen(t) > 0) {
    clearNode(t, t.roots[pick(boardsOpen(t), random)]!, out)
    return out
  }
  const wanted = 1 + pick(MOST_PIECES_OUT, random)
  const single = random() < SINGLE_SHARE
  for (let tries = 0; out.length < wanted && tries < 2 * wanted; tries++) {
    const node = t.nodeOf[pick(t.nodeOf.length, random)]!
    if (node < 0) continue
    clearNode(t, groupAbove(t, node, single ? 0 : pick(MOST_LEVELS + 1, random)), out)
  }
  return out
}

const areaOf = (job: Job, pieces: readonly number[]): number => {
  let sum = 0
  for (const piece of pieces) sum += job.areaUm2[piece]!
  return sum
}

/** State of the search: the trees, a copy to go back to, and the pieces that are out. */
interface Search {
  trees: CutTrees
  ints: Int32Array
  reals: Float64Array
  out: number[]
}

function keep(search: Search, out: number[]) {
  search.ints.set(search.trees.ints)
  search.reals.set(search.trees.reals)
  search.out = out
}

function goBack({ trees, ints, reals }: Search) {
  trees.ints.set(ints)
  trees.reals.set(reals)
}

/** What a round costs, in pieces squared, after which so many pieces are out. */
const goalRoundWork = (job: Job, trees: CutTrees, out: number): number =>
  ROUND_WORK +
  (job.boards.length > 1 ? KIND_WORK * job.boards.length : 0) +
  NODE_WORK * trees.what.length +
  LOOK_WORK * (out + USUAL_PIECES_OUT) * sparesListed(trees)

/** One round: opens boards within the price, takes pieces out and fits all that are out in again. */
function round(search: Search, job: Job, price: number, areaUm2: number, random: () => number): number[] {
  const { trees } = search
  const out = [...search.out, ...ruin(trees, random)]
  if (job.boards.length > 1) openWithin(trees, job, price, areaUm2, random)
  return refit(
    trees,
    job,
    sortedPieces(job, out, pick(ORDER_COUNT, random), SORT_NOISE * random(), random),
    random,
  )
}

/** Empties boards at random until those with pieces on them are below a price. */
function emptyDownTo(search: Search, job: Job, price: number, random: () => number) {
  const { trees } = search
  let roots = Array.from(trees.roots.subarray(0, boardsOpen(trees))).filter(
    (root) => trees.what[root] !== SPARE,
  )
  const spent = () => roots.reduce((sum, root) => sum + job.boards[trees.board[root]!]!.price, 0)
  const out: number[] = []
  while (roots.length > 0 && spent() >= price) {
    const chosen = roots[pick(roots.length, random)]!
    clearNode(trees, chosen, out)
    roots = roots.filter((root) => root !== chosen)
  }
  search.out = [...search.out, ...out]
}

/**
 * Goal-driven ruin and recreate: forbids the present price, so that too little board is on hand, takes a few pieces
 * out and fits pieces in again until all are in; then the new price is the one to beat. A round counts when it leaves
 * out no more area than the round some time ago.
 * Source: J. Gardeyn & T. Wauters, arXiv 2508.19306, 2025; late acceptance: E. Burke & Y. Bykov, EJOR 258, 2017.
 */
export function cheaper(job: Job, start: Packing, work: number, seed: number, enough: number): Packing {
  const random = randomFrom(seed)
  const pieces = Array.from(job.partOf, (_, piece) => piece)
  const total = areaOf(job, pieces)
  const boards = job.boards.reduce((sum, { count }) => sum + count, 0)
  const trees = emptyTrees(pieces.length, Math.min(boards, pieces.length), job.leastSideUm)
  const search: Search = {
    trees,
    ints: new Int32Array(trees.ints.length),
    reals: new Float64Array(trees.reals.length),
    out: pieces,
  }
  let best = start
  let { leftUm2, price } = scoreOf(job, start)
  const goal = () => (leftUm2 > 0 ? Infinity : price)
  const begin = () => {
    openWithin(trees, job, goal(), total, random)
    keep(search, refit(trees, job, sortedPieces(job, search.out, 0, 0, random), random))
    return new Float64Array(HISTORY).fill(areaOf(job, search.out))
  }
  let history = begin()
  for (let done = 0, count = 0; done < work && (leftUm2 > 0 || price > enough); count++) {
    const before = areaOf(job, search.out)
    const out = round(search, job, goal(), total, random)
    done += goalRoundWork(job, trees, out.length)
    const after = areaOf(job, out)
    const at = count % HISTORY
    if (after > before && after > history[at]!) goBack(search)
    else keep(search, out)
    history[at] = Math.min(history[at]!, Math.min(before, after))
    if (after > 0 && (leftUm2 === 0 || after >= leftUm2)) continue
    search.out = out
    best = { sheets: sheetsOf(trees, job), left: out }
    ;({ leftUm2, price } = scoreOf(job, best))
    emptyDownTo(search, job, goal(), random)
    history = begin()
  }
  return best
}
