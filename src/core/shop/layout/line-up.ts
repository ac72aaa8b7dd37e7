import type { Rect } from './next-cut.ts'
import { type SawNode, sawTree, sizeAlong } from './saw-tree.ts'
import { fenceMoves, separated } from './separate.ts'

/** With more parts than this a sheet is left as it is: the order of its cuts would take longer than its layout. */
const MOST_PARTS = 200

/** Strips with parts on them before empty ones, large ones first, so that equal ones come after each other. */
function inOrder({ children, direction }: SawNode): SawNode[] {
  if (direction === null) return []
  return [...children].sort(
    (a, b) =>
      Number(a.parts.length === 0) - Number(b.parts.length === 0) ||
      sizeAlong(b.at, direction) - sizeAlong(a.at, direction),
  )
}

function lay(node: SawNode, xUm: number, yUm: number, places: Map<Rect, Rect>) {
  if (node.direction === null) for (const part of node.parts) places.set(part, { ...part, xUm, yUm })
  let [x, y] = [xUm, yUm]
  for (const child of inOrder(node)) {
    lay(child, x, y, places)
    if (node.direction === 'across') x += child.at.lengthUm
    else y += child.at.widthUm
  }
}

const largest = (rects: readonly Rect[]): number =>
  rects.reduce((most, { lengthUm, widthUm }) => Math.max(most, lengthUm * widthUm), 0)

/**
 * The same parts on the same board with equal strips beside each other and empty ones last, where that sets the fence
 * less often, or as often with a larger offcut; never with a smaller one. Own derivation.
 * @param board  the board, from its trimmed corner
 * @param parts  what lies on it, to be taken apart by cuts from edge to edge
 */
export function linedUp(board: Rect, parts: readonly Rect[]): readonly Rect[] {
  if (parts.length > MOST_PARTS) return parts
  const places = new Map<Rect, Rect>()
  lay(sawTree(board, parts), board.xUm, board.yUm, places)
  const lined = parts.map((part) => places.get(part) ?? part)
  const [before, after] = [separated(board, parts), separated(board, lined)]
  const larger = largest(after.offcuts) - largest(before.offcuts)
  const fewer = fenceMoves(before.cuts) - fenceMoves(after.cuts)
  return larger >= 0 && (fewer > 0 || (fewer === 0 && larger > 0)) ? lined : parts
}
