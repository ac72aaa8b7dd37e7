import type { Rect, Separation } from './next-cut.ts'
import { type SawNode, sawTree, sizeAlong } from './saw-tree.ts'

/** Cuts in sawing order and what is left over of the board. */
export interface Separated {
  cuts: Separation[]
  offcuts: Rect[]
}

/** The parallel cuts of one piece, each taking the next strip off what remains. */
function cutsOf({ at, direction, children }: SawNode): Separation[] {
  if (direction === null) return []
  const cuts: Separation[] = []
  let rest = at
  for (const { at: strip } of children.slice(0, -1)) {
    const size = sizeAlong(strip, direction)
    if (direction === 'across') {
      cuts.push({ at: rest, direction, positionUm: rest.xUm + size })
      rest = { ...rest, xUm: rest.xUm + size, lengthUm: rest.lengthUm - size }
    } else {
      cuts.push({ at: rest, direction, positionUm: rest.yUm + size })
      rest = { ...rest, yUm: rest.yUm + size, widthUm: rest.widthUm - size }
    }
  }
  return cuts
}

/** What the fence stands at for a cut: the strip taken off, with the saw cut, micrometres. */
export const fenceSetting = ({ at, direction, positionUm }: Separation): number =>
  positionUm - (direction === 'across' ? at.xUm : at.yUm)

/** How often the fence has to be set anew, the first time included. */
export const fenceMoves = (cuts: readonly Separation[]): number =>
  cuts.filter((cut, index) => index === 0 || fenceSetting(cut) !== fenceSetting(cuts[index - 1]!)).length

/** A piece at hand with the parallel cuts that it still needs. */
interface Waiting {
  node: SawNode
  cuts: Separation[]
}

/** The one whose next cut needs no new setting, else the first. */
function nextOf(waiting: readonly Waiting[], setting: number): Waiting | undefined {
  return waiting.find(({ cuts }) => cuts[0] !== undefined && fenceSetting(cuts[0]) === setting) ?? waiting[0]
}

/**
 * The cuts that take a layout apart, in an order a saw can follow: each runs from edge to edge of one piece at hand.
 * Parallel cuts of a piece take strip by strip off it, so that equal strips come from one setting of the fence. As long
 * as some piece at hand needs the setting that the fence stands at, it comes next; what a piece was parted into comes
 * up when all its strips are sawn. Own derivation.
 */
export function separated(board: Rect, parts: readonly Rect[]): Separated {
  const done: Separated = { cuts: [], offcuts: [] }
  const takeUp = (nodes: readonly SawNode[]): Waiting[] => {
    done.offcuts.push(...nodes.filter((node) => node.parts.length === 0).map(({ at }) => at))
    return nodes.filter(({ direction }) => direction !== null).map((node) => ({ node, cuts: cutsOf(node) }))
  }
  let setting = 0
  let waiting = takeUp([sawTree(board, parts)])
  for (let next = waiting[0]; next !== undefined; next = nextOf(waiting, setting)) {
    const [cut, ...more] = next.cuts
    if (cut !== undefined) {
      done.cuts.push(cut)
      setting = fenceSetting(cut)
    }
    const after = more.length > 0 ? [{ node: next.node, cuts: more }] : takeUp(next.node.children)
    waiting = waiting.flatMap((one) => (one === next ? after : [one]))
  }
  return done
}
