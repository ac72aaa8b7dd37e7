import type { Job, JobBoard } from './job.ts'

/** A choice of boards: what it costs and the area it holds. */
interface Sum {
  price: number
  areaUm2: number
}

/** Above this many different sums neighbours are taken as one. */
const MOST_SUMS = 1000

/** Drops sums that cost no less and hold no more than another; of too many, pairs become one that is better than both. */
function thinned(sums: Sum[]): Sum[] {
  sums.sort((a, b) => a.price - b.price || b.areaUm2 - a.areaUm2)
  let most = -1
  let kept = sums.filter(({ areaUm2 }) => {
    const useful = areaUm2 > most
    if (useful) most = areaUm2
    return useful
  })
  while (kept.length > MOST_SUMS) {
    const all = kept
    kept = all.flatMap(({ price }, index) =>
      index % 2 === 0 ? [{ price, areaUm2: (all[index + 1] ?? all[index]!).areaUm2 }] : [],
    )
  }
  return kept
}

/** A count as a sum of lots, so that every smaller count is a choice of lots too: 1, 2, 4, ... and the rest. */
function lotsOf(count: number): number[] {
  const lots: number[] = []
  for (let left = count, lot = 1; left > 0; lot *= 2) {
    lots.push(Math.min(lot, left))
    left -= lot
  }
  return lots
}

/** Least price of boards that hold an area together, by subset sums over the counts. */
function priceOfArea(boards: readonly JobBoard[], areaUm2: number): number {
  let sums: Sum[] = [{ price: 0, areaUm2: 0 }]
  let least = Infinity
  for (const board of boards) {
    const boardUm2 = board.lengthUm * board.widthUm
    for (const lot of lotsOf(Math.min(board.count, Math.ceil(areaUm2 / boardUm2)))) {
      const more = sums.map((sum) => ({
        price: sum.price + lot * board.price,
        areaUm2: sum.areaUm2 + lot * boardUm2,
      }))
      for (const sum of more) if (sum.areaUm2 >= areaUm2) least = Math.min(least, sum.price)
      sums = thinned([...sums, ...more].filter((sum) => sum.areaUm2 < areaUm2 && sum.price < least))
    }
  }
  return least
}

/** Price of so many boards, cheapest first. */
function priceOfCheapest(boards: readonly JobBoard[], fewest: number): number {
  let [price, missing] = [0, fewest]
  for (const board of [...boards].sort((a, b) => a.price - b.price)) {
    const taken = Math.min(board.count, missing)
    price += taken * board.price
    missing -= taken
  }
  return price
}

/**
 * Price below which no layout of all parts can be: of boards that hold the area, and of the fewest boards there can
 * be. Infinity when the boards cannot hold the parts.
 * @param fewest  boards that any layout needs
 */
export function leastPrice(job: Job, fewest: number): number {
  const areaUm2 = job.areaUm2.reduce((sum, area) => sum + area, 0)
  return Math.max(priceOfArea(job.boards, areaUm2), priceOfCheapest(job.boards, fewest))
}
