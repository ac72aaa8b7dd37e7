import { type CutTrees, sparesListed, takesMore } from './cut-tree.ts'
import { layPiece } from './cut-tree-change.ts'
import type { Job } from './job.ts'

/** Share of places that are overlooked, so that the same pieces do not always come back to the same place. Measured. */
const OVERLOOKED = 0.03

/** The best place found so far for one piece: spare -1 for none. */
interface Place {
  spare: number
  value: number
  turned: boolean
  across: boolean
}

/** What a spare rectangle is worth: area^1.25, so that few large ones are liked; nothing when it takes no piece. */
const worth = (length: number, width: number, least: number): number => {
  if (length < least || width < least) return 0
  const area = length * width
  return area * Math.sqrt(Math.sqrt(area))
}

function weigh(t: CutTrees, spare: number, length: number, width: number, turned: boolean, best: Place) {
  const [boardLength, boardWidth] = [t.length[spare]!, t.width[spare]!]
  const [restLength, restWidth, least] = [boardLength - length, boardWidth - width, t.leastSide]
  const before = worth(boardLength, boardWidth, least)
  const across = worth(restLength, boardWidth, least) + worth(length, restWidth, least) - before
  const along = worth(boardLength, restWidth, least) + worth(restLength, width, least) - before
  if (across <= best.value && along <= best.value) return
  best.spare = spare
  best.turned = turned
  best.across = across >= along
  best.value = Math.max(across, along)
}

/** Which of the allowed ways a piece fits a spare: 1 as given, 2 turned, 3 either, 0 not at all; a square lies one way. */
function waysInto(t: CutTrees, spare: number, length: number, width: number, allowed: number): number {
  const [boardLength, boardWidth] = [t.length[spare]!, t.width[spare]!]
  const given = length <= boardLength && width <= boardWidth ? 1 : 0
  const turned = width <= boardLength && length <= boardWidth ? 2 : 0
  const ways = (given | turned) & allowed
  return ways === 3 && length === width ? 1 : ways
}

function bestPlace(t: CutTrees, job: Job, piece: number, random: () => number, best: Place) {
  const [length, width] = [job.lengthUm[piece]!, job.widthUm[piece]!]
  const row = piece * job.boards.length
  best.spare = -1
  best.value = -Infinity
  for (let at = sparesListed(t) - 1; at >= 0; at--) {
    const spare = t.spares[at]!
    const ways = waysInto(t, spare, length, width, job.ways[row + t.board[spare]!]!)
    if (ways === 0 || random() < OVERLOOKED) continue
    if (ways & 1) weigh(t, spare, length, width, false, best)
    if (ways & 2) weigh(t, spare, width, length, true, best)
  }
}

/** Lays pieces in their order each on its best spare; gives those that found none. */
export function refit(t: CutTrees, job: Job, pieces: readonly number[], random: () => number): number[] {
  const out: number[] = []
  const best: Place = { spare: -1, value: 0, turned: false, across: false }
  for (const piece of pieces) {
    bestPlace(t, job, piece, random, best)
    if (best.spare < 0 || !takesMore(t)) {
      out.push(piece)
      continue
    }
    const [length, width] = [job.lengthUm[piece]!, job.widthUm[piece]!]
    if (best.turned) layPiece(t, best.spare, piece, width, length, true, best.across)
    else layPiece(t, best.spare, piece, length, width, false, best.across)
  }
  return out
}
