/** What a node of a cut tree is. */
export const SPARE = 0
export const PIECE = 1
export const CUT = 2

/**
 * Cut trees of all boards, in typed arrays so that a copy costs two moves of memory. A node is a rectangle: spare, a
 * piece, or cut into children that lie side by side along the length (`across` 1) or stacked (0); directions alternate
 * from parent to child, and of the children at most one is spare.
 */
export interface CutTrees {
  /** Everything below, as two blocks. */
  ints: Int32Array
  reals: Float64Array
  /** Nodes ever made, first node to be made again, spares listed, boards open, nodes in use. */
  counts: Int32Array
  what: Int32Array
  across: Int32Array
  parent: Int32Array
  first: Int32Array
  next: Int32Array
  previous: Int32Array
  piece: Int32Array
  turned: Int32Array
  /** Kind of board that the node lies on. */
  board: Int32Array
  /** Spares wide enough for some piece, in any order, and where each stands there (-1: not). */
  spares: Int32Array
  spareAt: Int32Array
  /** Node of every piece, -1 while it is out. */
  nodeOf: Int32Array
  roots: Int32Array
  length: Float64Array
  width: Float64Array
  /** A spare with a side shorter than this takes nothing. */
  leastSide: number
}

const [MADE, FREE, LISTED, OPEN, USED] = [0, 1, 2, 3, 4]
const COUNTS = 5
/** Laying a piece makes four nodes at most; removing one may leave some of them. */
const NODES_A_PIECE = 8
const NODES_IN_HAND = 4

export function emptyTrees(pieces: number, boards: number, leastSide: number): CutTrees {
  const nodes = NODES_A_PIECE * pieces + 2 * boards + NODES_IN_HAND
  const ints = new Int32Array(COUNTS + 11 * nodes + pieces + boards)
  const reals = new Float64Array(2 * nodes)
  let from = 0
  const view = (size: number) => {
    from += size
    return ints.subarray(from - size, from)
  }
  const trees: CutTrees = {
    ints,
    reals,
    counts: view(COUNTS),
    what: view(nodes),
    across: view(nodes),
    parent: view(nodes),
    first: view(nodes),
    next: view(nodes),
    previous: view(nodes),
    piece: view(nodes),
    turned: view(nodes),
    board: view(nodes),
    spares: view(nodes),
    spareAt: view(nodes),
    nodeOf: view(pieces).fill(-1),
    roots: view(boards),
    length: reals.subarray(0, nodes),
    width: reals.subarray(nodes),
    leastSide,
  }
  trees.counts[FREE] = -1
  return trees
}

export const sparesListed = (t: CutTrees): number => t.counts[LISTED]!
export const boardsOpen = (t: CutTrees): number => t.counts[OPEN]!

/** Whether there are nodes in hand for one more piece. */
export const takesMore = (t: CutTrees): boolean => t.counts[USED]! + NODES_IN_HAND <= t.what.length

export function makeNode(t: CutTrees, parent: number, board: number, length: number, width: number): number {
  let node = t.counts[FREE]!
  if (node >= 0) t.counts[FREE] = t.next[node]!
  else node = t.counts[MADE]!++
  t.counts[USED]!++
  t.what[node] = SPARE
  t.board[node] = board
  t.length[node] = length
  t.width[node] = width
  t.spareAt[node] = -1
  t.first[node] = -1
  t.next[node] = -1
  t.previous[node] = -1
  t.parent[node] = -1
  if (parent >= 0) link(t, parent, node)
  return node
}

export function freeNode(t: CutTrees, node: number) {
  t.counts[USED]!--
  t.next[node] = t.counts[FREE]!
  t.counts[FREE] = node
}

export function link(t: CutTrees, parent: number, node: number) {
  const head = t.first[parent]!
  t.parent[node] = parent
  t.previous[node] = -1
  t.next[node] = head
  if (head >= 0) t.previous[head] = node
  t.first[parent] = node
}

export function unlink(t: CutTrees, node: number) {
  const [before, after] = [t.previous[node]!, t.next[node]!]
  if (before >= 0) t.next[before] = after
  else t.first[t.parent[node]!] = after
  if (after >= 0) t.previous[after] = before
}

/** Takes a spare off the list. */
export function unlist(t: CutTrees, node: number) {
  const at = t.spareAt[node]!
  if (at < 0) return
  const last = t.spares[--t.counts[LISTED]!]!
  t.spares[at] = last
  t.spareAt[last] = at
  t.spareAt[node] = -1
}

/** Puts a spare on the list as long as it can take a piece. */
export function list(t: CutTrees, node: number) {
  if (t.length[node]! < t.leastSide || t.width[node]! < t.leastSide) return unlist(t, node)
  if (t.spareAt[node]! >= 0) return
  t.spareAt[node] = t.counts[LISTED]!
  t.spares[t.counts[LISTED]!++] = node
}

export function openBoard(t: CutTrees, board: number, length: number, width: number) {
  const root = makeNode(t, -1, board, length, width)
  t.roots[t.counts[OPEN]!++] = root
  list(t, root)
}

/** Closes the board at a place among the open ones; nothing may lie on it. */
export function closeBoard(t: CutTrees, at: number) {
  const root = t.roots[at]!
  unlist(t, root)
  freeNode(t, root)
  t.roots[at] = t.roots[--t.counts[OPEN]!]!
}
