import type { Job } from './job.ts'

/** One board with pieces on it; positions in micrometres from the trimmed corner. */
export interface Sheet {
  /** Index into the boards of the job. */
  board: number
  pieces: number[]
  xUm: number[]
  yUm: number[]
  turned: boolean[]
  /** Area of the pieces, kerf included. */
  usedUm2: number
  /** Largest free rectangle the search left on it. */
  freeUm2: number
}

/** A layout, and the pieces that found no place. */
export interface Packing {
  sheets: Sheet[]
  left: number[]
}

/** What a layout is judged by, in this order: area not placed, price, boards, evenness (less is better). */
export interface Score {
  leftUm2: number
  price: number
  boards: number
  /** Minus the sum of squared fills: low when some boards are full and one is nearly empty. */
  evenness: number
}

export function scoreOf(job: Job, packing: Packing): Score {
  const score = { leftUm2: 0, price: 0, boards: packing.sheets.length, evenness: 0 }
  for (const piece of packing.left) score.leftUm2 += job.areaUm2[piece]!
  for (const sheet of packing.sheets) {
    const board = job.boards[sheet.board]!
    score.price += board.price
    score.evenness -= (sheet.usedUm2 / (board.lengthUm * board.widthUm)) ** 2
  }
  return score
}

/** Below zero when `a` is the better layout; evenness counts only beyond `slack`. */
export function compareScores(a: Score, b: Score, slack = 0): number {
  return (
    a.leftUm2 - b.leftUm2 ||
    a.price - b.price ||
    a.boards - b.boards ||
    (a.evenness > b.evenness + slack ? 1 : a.evenness < b.evenness ? -1 : 0)
  )
}

/** How many boards of each kind a layout takes. */
export function boardsTaken(job: Job, sheets: readonly Sheet[]): number[] {
  const taken = job.boards.map(() => 0)
  for (const sheet of sheets) taken[sheet.board] = (taken[sheet.board] ?? 0) + 1
  return taken
}
