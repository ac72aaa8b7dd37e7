import type { Job } from './job.ts'

/** What pieces are sorted by, largest first. */
type Size = (length: number, width: number) => number

const SIZES: readonly Size[] = [
  (length, width) => length * width,
  (length, width) => Math.max(length, width),
  (length, width) => Math.min(length, width),
  (length, width) => length + width,
  (length, width) => Math.abs(length - width),
  (length) => length,
  (_, width) => width,
]

export const ORDER_COUNT = SIZES.length

/**
 * Pieces sorted by one of the sizes, largest first.
 * @param noise  share by which a size may be misjudged (0: plain sorting), drawn from `random`
 */
export function sortedPieces(
  job: Job,
  pieces: readonly number[],
  order: number,
  noise: number,
  random: () => number,
): number[] {
  const size = SIZES[order]!
  const keyed = pieces.map((piece) => {
    const long = Math.max(job.lengthUm[piece]!, job.widthUm[piece]!)
    const key = size(job.lengthUm[piece]!, job.widthUm[piece]!) * (1 + (noise === 0 ? 0 : noise * random()))
    return { piece, key, long }
  })
  keyed.sort((a, b) => b.key - a.key || b.long - a.long || a.piece - b.piece)
  return keyed.map(({ piece }) => piece)
}

/** Sensible orders to open kinds of board in: cheapest first, largest first, cheapest for its area first. */
export function boardOrders(job: Job): number[][] {
  const kinds = job.boards.map((_, kind) => kind)
  if (kinds.length === 1) return [kinds]
  const area = (kind: number) => job.boards[kind]!.lengthUm * job.boards[kind]!.widthUm
  const price = (kind: number) => job.boards[kind]!.price
  return [
    [...kinds].sort((a, b) => price(a) - price(b)),
    [...kinds].sort((a, b) => area(b) - area(a)),
    [...kinds].sort((a, b) => price(a) / area(a) - price(b) / area(b) || area(b) - area(a)),
  ]
}
