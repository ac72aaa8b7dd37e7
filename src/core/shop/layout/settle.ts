import { RULES } from './first-layout.ts'
import { layGreedily } from './greedy.ts'
import type { Job } from './job.ts'
import { ORDER_COUNT, sortedPieces } from './order.ts'
import type { Packing, Sheet } from './packing.ts'

const fill = (job: Job, sheet: Sheet): number =>
  sheet.usedUm2 / (job.boards[sheet.board]!.lengthUm * job.boards[sheet.board]!.widthUm)

/** The same pieces on the same kind of board, laid by every rule: the one that leaves the largest rectangle. */
function withLargestOffcut(job: Job, sheet: Sheet): Sheet {
  const onHand = job.boards.map((_, board) => (board === sheet.board ? 1 : 0))
  let best = sheet
  for (const rule of RULES) {
    for (let order = 0; order < ORDER_COUNT; order++) {
      const pieces = sortedPieces(job, sheet.pieces, order, 0, () => 0)
      const packing = layGreedily(job, pieces, [sheet.board], onHand, rule)
      const [only] = packing.sheets
      if (packing.left.length === 0 && only !== undefined && only.freeUm2 > best.freeUm2) best = only
    }
  }
  return best
}

/** Above this many pieces on the emptiest board the offcut is left as it is. */
const MOST_PIECES_SETTLED = 100

/** Lays the emptiest board once more so that what is left of it stays in one large piece. */
export function settled(job: Job, packing: Packing): Packing {
  const emptiest = [...packing.sheets].sort((a, b) => fill(job, a) - fill(job, b))[0]
  if (emptiest === undefined || emptiest.pieces.length > MOST_PIECES_SETTLED) return packing
  const better = withLargestOffcut(job, emptiest)
  return { ...packing, sheets: packing.sheets.map((sheet) => (sheet === emptiest ? better : sheet)) }
}
