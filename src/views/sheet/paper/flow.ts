/** A piece of a text that is never parted: a line of a list, a row of a table, a picture. */
export interface Piece {
  heightPt: number
  /** Air above it, but not at the top of a page. */
  gapPt: number
  /** true for what makes no sense at the foot of a page without the piece behind it: a heading. */
  keepWithNext?: boolean
  /** What stands above it again where it begins a page: the head of a table. */
  head?: Piece
  draw: (yPt: number, pageOf: PageOf) => void
}

/** Number of the page on which the drawings of a name begin, and how many they are. */
export type PageOf = (what: string) => { first: number; count: number }

/** A piece on its page, from the top of the room. */
export interface Placed {
  piece: Piece
  yPt: number
}

/** Height of a piece with all that has to follow it on the same page. */
function heightOfChain(pieces: readonly Piece[], from: number): number {
  let sum = 0
  for (const [index, piece] of pieces.slice(from).entries()) {
    sum += (index === 0 ? 0 : piece.gapPt) + piece.heightPt
    if (piece.keepWithNext !== true) break
  }
  return sum
}

/**
 * Pieces on as many pages as they need: what belongs together stays together as far as a page takes it, and the
 * head of a table is repeated.
 * @param roomPt  height of the text on a page
 */
export function flowed(pieces: readonly Piece[], roomPt: number): Placed[][] {
  const pages: Placed[][] = [[]]
  let downPt = 0
  for (const [index, piece] of pieces.entries()) {
    const isFirst = pages.at(-1)?.length === 0
    const chainPt = heightOfChain(pieces, index)
    const neededPt = chainPt > roomPt ? piece.heightPt : chainPt
    if (!isFirst && downPt + piece.gapPt + neededPt > roomPt) {
      pages.push(piece.head === undefined ? [] : [{ piece: piece.head, yPt: 0 }])
      downPt = piece.head?.heightPt ?? 0
    }
    const gapPt = pages.at(-1)?.length === 0 ? 0 : piece.gapPt
    pages.at(-1)?.push({ piece, yPt: downPt + gapPt })
    downPt += gapPt + piece.heightPt
  }
  return pages
}
