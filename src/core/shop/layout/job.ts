import type { Part, Stock } from '../../../schema/shop.ts'

/** A board as the search sees it: usable sides plus one kerf, in whole micrometres. */
export interface JobBoard {
  /** Index into the stock of the request. */
  stock: number
  lengthUm: number
  widthUm: number
  count: number
  /** What taking one costs: its cost in whole millionths when every board has one, else its area in square micrometres. */
  price: number
}

/** Parts and boards that can meet each other, in whole micrometres, every size one kerf larger. */
export interface Job {
  boards: JobBoard[]
  /** One entry a single piece: index of its part in the request. */
  partOf: Int32Array
  lengthUm: Float64Array
  widthUm: Float64Array
  areaUm2: Float64Array
  /** Ways a piece may lie on a board, at piece × boards + board: 1 as given, 2 turned, 3 either, 0 not at all. */
  ways: Uint8Array
  /** The shortest side of any piece: a remainder narrower than this takes nothing. */
  leastSideUm: number
}

/** Whole micrometres make every comparison of sums exact. */
export const micrometres = (mm: number): number => Math.round(mm * 1000)

/** A part may be turned unless its grain and the board's forbid it. */
export function waysOfGrain(part: Part['grain'], board: Stock['grain']): number {
  if ((part ?? 'any') === 'any' || (board ?? 'none') === 'none') return 3
  return part === board ? 1 : 2
}

/** Whether the part may come from the board; a thickness that is not given meets any. */
export const thicknessMeets = (part: Part, board: Stock): boolean =>
  part.thicknessMm === undefined ||
  board.thicknessMm === undefined ||
  micrometres(part.thicknessMm) === micrometres(board.thicknessMm)

/** Ways the part may lie on the board, sizes included (both one kerf larger). */
export function waysOf(part: Part, board: Stock, kerfMm: number): number {
  if (!thicknessMeets(part, board)) return 0
  const kerf = micrometres(kerfMm)
  const trim = 2 * micrometres(board.trimMm ?? 0)
  const [long, wide] = [micrometres(board.lengthMm) - trim + kerf, micrometres(board.widthMm) - trim + kerf]
  const [length, width] = [micrometres(part.lengthMm) + kerf, micrometres(part.widthMm) + kerf]
  const fits = (length <= long && width <= wide ? 1 : 0) | (width <= long && length <= wide ? 2 : 0)
  return fits & waysOfGrain(part.grain, board.grain)
}

/** Money in whole millionths, so that sums of costs compare exactly. */
const MONEY = 1e6

/** What one board of each kind costs: money when every kind names it, else area in square micrometres. */
export function pricesOf(stock: readonly Stock[]): number[] {
  const inMoney = stock.every((board) => board.cost !== undefined)
  return stock.map((board) =>
    inMoney
      ? Math.round(MONEY * (board.cost ?? 0))
      : micrometres(board.lengthMm) * micrometres(board.widthMm),
  )
}

function joined(groups: number[][], reach: number[]): number[][] {
  const meets = groups.filter((group) => group.some((board) => reach.includes(board)))
  const apart = groups.filter((group) => !meets.includes(group))
  return [...apart, [...new Set([...reach, ...meets.flat()])]]
}

/** Boards that share no part are laid out apart: each group is a job of its own. */
function boardGroups(ways: number[][]): number[][] {
  let groups: number[][] = []
  for (const row of ways) {
    const reach = row.flatMap((way, board) => (way > 0 ? [board] : []))
    if (reach.length > 0) groups = joined(groups, reach)
  }
  return groups.map((group) => group.sort((a, b) => a - b))
}

function jobOf(parts: readonly Part[], ways: number[][], boards: JobBoard[], kerfMm: number): Job {
  const partOf = Int32Array.from(
    parts.flatMap((part, index) =>
      boards.some((board) => (ways[index]?.[board.stock] ?? 0) > 0)
        ? Array.from({ length: part.count ?? 1 }, () => index)
        : [],
    ),
  )
  const kerf = micrometres(kerfMm)
  const lengthUm = Float64Array.from(partOf, (part) => micrometres(parts[part]!.lengthMm) + kerf)
  const widthUm = Float64Array.from(partOf, (part) => micrometres(parts[part]!.widthMm) + kerf)
  return {
    boards,
    partOf,
    lengthUm,
    widthUm,
    areaUm2: lengthUm.map((length, piece) => length * widthUm[piece]!),
    ways: Uint8Array.from(
      [...partOf].flatMap((part) => boards.map((board) => ways[part]?.[board.stock] ?? 0)),
    ),
    leastSideUm: lengthUm.reduce((least, side, piece) => Math.min(least, side, widthUm[piece]!), Infinity),
  }
}

/**
 * Splits a request into jobs that share neither parts nor boards.
 * The kerf disappears by giving every part and every usable board one kerf more in both directions:
 * w1 + k + w2 <= W is the same as (w1 + k) + (w2 + k) <= W + k. Derived.
 */
export function jobsOf(parts: readonly Part[], stock: readonly Stock[], kerfMm: number): Job[] {
  const ways = parts.map((part) => stock.map((board) => waysOf(part, board, kerfMm)))
  const prices = pricesOf(stock)
  return boardGroups(ways).map((group) =>
    jobOf(
      parts,
      ways,
      group.map((index) => {
        const board = stock[index]!
        const trim = 2 * micrometres(board.trimMm ?? 0)
        return {
          stock: index,
          lengthUm: micrometres(board.lengthMm) - trim + micrometres(kerfMm),
          widthUm: micrometres(board.widthMm) - trim + micrometres(kerfMm),
          count: board.count ?? 1,
          price: prices[index]!,
        }
      }),
      kerfMm,
    ),
  )
}
