import type { Job } from './job.ts'
import type { Packing, Sheet } from './packing.ts'

/** A bounding box of a set of pieces that edge-to-edge cuts take apart, and how it was put together. */
interface Block {
  lengthUm: number
  widthUm: number
  make: { piece: number; turned: boolean } | { first: Block; second: Block; across: boolean }
}

/** Keeps the boxes that no other one fits inside. */
function smallest(blocks: Block[]): Block[] {
  blocks.sort((a, b) => a.lengthUm - b.lengthUm || a.widthUm - b.widthUm)
  let least = Infinity
  return blocks.filter((block) => {
    const useful = block.widthUm < least
    if (useful) least = block.widthUm
    return useful
  })
}

function single(job: Job, piece: number, board: number): Block[] {
  const ways = job.ways[piece * job.boards.length + board]!
  const [length, width] = [job.lengthUm[piece]!, job.widthUm[piece]!]
  return smallest([
    ...(ways & 1 ? [{ lengthUm: length, widthUm: width, make: { piece, turned: false } }] : []),
    ...(ways & 2 ? [{ lengthUm: width, widthUm: length, make: { piece, turned: true } }] : []),
  ])
}

/** Both ways to join two blocks with one cut between them, when they stay on the board. */
function joined(first: Block, second: Block, lengthUm: number, widthUm: number): Block[] {
  const beside: Block = {
    lengthUm: first.lengthUm + second.lengthUm,
    widthUm: Math.max(first.widthUm, second.widthUm),
    make: { first, second, across: true },
  }
  const above: Block = {
    lengthUm: Math.max(first.lengthUm, second.lengthUm),
    widthUm: first.widthUm + second.widthUm,
    make: { first, second, across: false },
  }
  return [beside, above].filter((block) => block.lengthUm <= lengthUm && block.widthUm <= widthUm)
}

/** Every way to put a set together from two smaller ones, each pair once. */
function together(blocks: readonly Block[][], set: number, lengthUm: number, widthUm: number): Block[] {
  const lowest = set & -set
  const found: Block[] = []
  for (let part = (set - 1) & set; part > 0; part = (part - 1) & set) {
    if ((part & lowest) === 0) continue
    for (const first of blocks[part]!) {
      for (const second of blocks[set ^ part]!) found.push(...joined(first, second, lengthUm, widthUm))
    }
  }
  return found
}

/** The smallest blocks of every set of pieces (a bit each) on one kind of board. */
function blocksOn(job: Job, board: number): Block[][] {
  const { lengthUm, widthUm } = job.boards[board]!
  const blocks: Block[][] = [[]]
  for (let set = 1; set < 1 << job.partOf.length; set++) {
    const isSingle = (set & (set - 1)) === 0
    blocks[set] = isSingle
      ? single(job, Math.log2(set), board)
      : smallest(together(blocks, set, lengthUm, widthUm))
  }
  return blocks
}

/** Cheapest way found to lay a set of pieces on the boards seen so far. */
interface Plan {
  price: number
  boards: number
  last: { board: number; block: Block; before: Plan } | null
}

function better(a: Plan, b: Plan | undefined): boolean {
  return b === undefined || a.price < b.price || (a.price === b.price && a.boards < b.boards)
}

/** Lets one more board of a kind be used for any set of pieces. */
function withOneMore(plans: (Plan | undefined)[], blocks: readonly Block[][], board: number, price: number) {
  return plans.map((known, set) => {
    let best = known
    for (let part = set; part > 0; part = (part - 1) & set) {
      const block = blocks[part]?.[0]
      const before = plans[set ^ part]
      if (block === undefined || before === undefined) continue
      const plan = { price: before.price + price, boards: before.boards + 1, last: { board, block, before } }
      if (better(plan, best)) best = plan
    }
    return best
  })
}

function layBlock(job: Job, block: Block, xUm: number, yUm: number, sheet: Sheet) {
  if ('piece' in block.make) {
    const { piece, turned } = block.make
    sheet.pieces.push(piece)
    sheet.xUm.push(xUm)
    sheet.yUm.push(yUm)
    sheet.turned.push(turned)
    sheet.usedUm2 += job.areaUm2[piece]!
    return
  }
  const { first, second, across } = block.make
  layBlock(job, first, xUm, yUm, sheet)
  layBlock(job, second, xUm + (across ? first.lengthUm : 0), yUm + (across ? 0 : first.widthUm), sheet)
}

function sheetsOf(job: Job, plan: Plan): Sheet[] {
  if (plan.last === null) return []
  const { board, block, before } = plan.last
  const sheet: Sheet = { board, pieces: [], xUm: [], yUm: [], turned: [], usedUm2: 0, freeUm2: 0 }
  layBlock(job, block, 0, 0, sheet)
  return [...sheetsOf(job, before), sheet]
}

/** Most kinds of board by the number of pieces: subsets of subsets triple with every piece. */
const MOST_KINDS_EXACT: readonly { toPieces: number; kinds: number }[] = [
  { toPieces: 7, kinds: 8 },
  { toPieces: 8, kinds: 4 },
  { toPieces: 9, kinds: 2 },
]

/** Whether the job is small enough to be solved exactly within the time of a request. */
export const isSmall = (job: Job): boolean =>
  job.boards.length <= (MOST_KINDS_EXACT.find(({ toPieces }) => job.partOf.length <= toPieces)?.kinds ?? 0)

/**
 * The cheapest layout there is for a few pieces, or when the boards do not suffice the one that places most area:
 * for every set of pieces all smallest boxes from every split into two, then the cheapest choice of boards over
 * sets. Decides every case that `isSmall`.
 * Source: dynamic programme over subsets, own derivation from the recursive meaning of edge-to-edge cuts.
 */
export function exactLayout(job: Job): Packing {
  const sets = 1 << job.partOf.length
  let plans: (Plan | undefined)[] = Array.from({ length: sets }, (_, set) =>
    set === 0 ? { price: 0, boards: 0, last: null } : undefined,
  )
  job.boards.forEach(({ count, price }, board) => {
    const blocks = blocksOn(job, board)
    for (let used = 0; used < Math.min(count, job.partOf.length); used++) {
      plans = withOneMore(plans, blocks, board, price)
    }
  })
  const pieces = Array.from(job.partOf, (_, piece) => piece)
  const areaOf = (set: number) =>
    pieces.reduce((sum, piece) => sum + (set & (1 << piece) ? job.areaUm2[piece]! : 0), 0)
  let best = 0
  plans.forEach((plan, set) => {
    if (plan !== undefined && areaOf(set) > areaOf(best)) best = set
  })
  return { sheets: sheetsOf(job, plans[best]!), left: pieces.filter((piece) => (best & (1 << piece)) === 0) }
}
