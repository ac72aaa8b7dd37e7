import { boardsOpen, type CutTrees, closeBoard, openBoard, SPARE } from './cut-tree.ts'
import type { Job } from './job.ts'

/** Draws of boards of which the first that holds all the parts is taken. */
const DRAWS = 8

/** Closes the boards that nothing lies on. */
function closeEmpty(t: CutTrees) {
  for (let at = boardsOpen(t) - 1; at >= 0; at--) if (t.what[t.roots[at]!] === SPARE) closeBoard(t, at)
}

/** Kinds of board drawn at random as long as the price stays below the goal. */
function drawn(job: Job, onHand: number[], price: number, most: number, random: () => number): number[] {
  const kinds = job.boards.map((_, kind) => kind)
  const taken: number[] = []
  let left = price
  while (kinds.length > 0 && taken.length < most) {
    const at = Math.floor(random() * kinds.length)
    const kind = kinds[at]!
    if (onHand[kind]! > 0 && job.boards[kind]!.price < left) {
      taken.push(kind)
      onHand[kind]!--
      left -= job.boards[kind]!.price
    } else kinds.splice(at, 1)
  }
  return taken
}

/**
 * Opens boards, at random where there are several kinds, as long as all of them stay below a price. Boards that
 * nothing lies on are closed first.
 * @param areaUm2  area that the boards shall hold together where a draw does
 */
export function openWithin(t: CutTrees, job: Job, price: number, areaUm2: number, random: () => number) {
  closeEmpty(t)
  const onHand = job.boards.map(({ count }) => count)
  let [left, missing] = [price, areaUm2]
  for (let at = 0; at < boardsOpen(t); at++) {
    const kind = t.board[t.roots[at]!]!
    const { lengthUm, widthUm, price: spent } = job.boards[kind]!
    onHand[kind]!--
    left -= spent
    missing -= lengthUm * widthUm
  }
  const areaOf = (kinds: readonly number[]) =>
    kinds.reduce((sum, kind) => sum + job.boards[kind]!.lengthUm * job.boards[kind]!.widthUm, 0)
  const most = t.roots.length - boardsOpen(t)
  let best: number[] = []
  for (let draw = 0; draw < DRAWS; draw++) {
    const kinds = drawn(job, [...onHand], left, most, random)
    if (areaOf(kinds) > areaOf(best)) best = kinds
    if (job.boards.length === 1 || areaOf(best) >= missing) break
  }
  for (const kind of best) openBoard(t, kind, job.boards[kind]!.lengthUm, job.boards[kind]!.widthUm)
}
