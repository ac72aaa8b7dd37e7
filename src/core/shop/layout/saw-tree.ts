import { halvesOf, nextCut, type Rect, type Separation, within } from './next-cut.ts'

/** A piece at hand and what parallel cuts make of it, side by side; without a cut it is a part or left over. */
export interface SawNode {
  at: Rect
  parts: readonly Rect[]
  direction: Separation['direction'] | null
  children: SawNode[]
}

/**
 * How cuts from edge to edge take a board apart: cuts of one direction in one piece stand beside each other, whatever
 * their order, and directions alternate from a piece to what comes of it.
 * @param at     the piece at hand
 * @param parts  what lies on it
 */
export function sawTree(at: Rect, parts: readonly Rect[]): SawNode {
  const cut = parts.length === 0 ? undefined : nextCut(at, parts)
  if (cut === undefined) return { at, parts, direction: null, children: [] }
  const { direction } = cut
  const children = halvesOf(at, cut)
    .map((half) => sawTree(half, within(parts, half)))
    .flatMap((child) => (child.direction === direction ? child.children : [child]))
  return { at, parts, direction, children }
}

/** Size of a piece in the direction that is measured for a cut. */
export const sizeAlong = (at: Rect, direction: Separation['direction']): number =>
  direction === 'across' ? at.lengthUm : at.widthUm
