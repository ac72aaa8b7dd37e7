import {
  CUT,
  type CutTrees,
  freeNode,
  link,
  list,
  makeNode,
  PIECE,
  SPARE,
  unlink,
  unlist,
} from './cut-tree.ts'

const side = (t: CutTrees, node: number, across: number): number =>
  across === 1 ? t.length[node]! : t.width[node]!

function lengthen(t: CutTrees, node: number, across: number, by: number) {
  if (across === 1) t.length[node]! += by
  else t.width[node]! += by
}

/** The spare child of a cut node other than one of them, -1 for none. */
function spareOf(t: CutTrees, cut: number, but = -1): number {
  let child = t.first[cut]!
  while (child >= 0 && (t.what[child] !== SPARE || child === but)) child = t.next[child]!
  return child
}

function drop(t: CutTrees, node: number) {
  unlist(t, node)
  unlink(t, node)
  freeNode(t, node)
}

/** Cuts a spare so that its first part has a size in one direction; gives that part, the rest is spare. */
function split(t: CutTrees, node: number, across: number, size: number): number {
  const rest = side(t, node, across) - size
  if (rest === 0) return node
  const parent = t.parent[node]!
  const [restLength, restWidth] = across === 1 ? [rest, t.width[node]!] : [t.length[node]!, rest]
  if (parent >= 0 && t.across[parent] === across) {
    lengthen(t, node, across, -rest)
    list(t, makeNode(t, parent, t.board[node]!, restLength, restWidth))
    return node
  }
  t.what[node] = CUT
  t.across[node] = across
  list(t, makeNode(t, node, t.board[node]!, restLength, restWidth))
  const part = makeNode(t, node, t.board[node]!, t.length[node]!, t.width[node]!)
  lengthen(t, part, across, -rest)
  return part
}

/** Lays a piece on a spare; the first cut runs across the board or along it. */
export function layPiece(
  t: CutTrees,
  spare: number,
  piece: number,
  length: number,
  width: number,
  turned: boolean,
  across: boolean,
) {
  unlist(t, spare)
  const strip = across ? split(t, spare, 1, length) : split(t, spare, 0, width)
  const node = across ? split(t, strip, 0, width) : split(t, strip, 1, length)
  t.what[node] = PIECE
  t.piece[node] = piece
  t.turned[node] = turned ? 1 : 0
  t.nodeOf[piece] = node
}

/** A cut node with one child left becomes that child; the children of a cut child join those of the parent. */
function dissolve(t: CutTrees, cut: number) {
  const only = t.first[cut]!
  if (t.what[only] === PIECE) {
    t.what[cut] = PIECE
    t.piece[cut] = t.piece[only]!
    t.turned[cut] = t.turned[only]!
    t.nodeOf[t.piece[only]!] = cut
    t.first[cut] = -1
  } else {
    const parent = t.parent[cut]!
    for (let child = t.first[only]!; child >= 0; ) {
      const after = t.next[child]!
      link(t, parent, child)
      child = after
    }
    unlink(t, cut)
    freeNode(t, cut)
  }
  freeNode(t, only)
}

/** Takes some of the spare off one side of a child of a cut node. */
function narrow(t: CutTrees, child: number, across: number, by: number) {
  lengthen(t, child, across, -by)
  if (t.what[child] === SPARE) return list(t, child)
  const spare = spareOf(t, child)
  lengthen(t, spare, across, -by)
  if (side(t, spare, across) > 0) return list(t, spare)
  drop(t, spare)
  if (t.next[t.first[child]!]! < 0) dissolve(t, child)
}

/** One spare of two; there are never more, since a lone strip beside a spare has no spare of its own (justified away). */
function joinSpares(t: CutTrees, cut: number) {
  const spare = spareOf(t, cut)
  const other = spare < 0 ? -1 : spareOf(t, cut, spare)
  if (other < 0) return
  lengthen(t, spare, t.across[cut]!, side(t, other, t.across[cut]!))
  drop(t, other)
  list(t, spare)
}

/** What all children of a cut node can spare in one direction. */
function slackOf(t: CutTrees, cut: number, across: number): number {
  let slack = Infinity
  for (let child = t.first[cut]!; child >= 0; child = t.next[child]!) {
    if (t.what[child] === SPARE) continue
    const spare = t.what[child] === CUT ? spareOf(t, child) : -1
    slack = Math.min(slack, spare < 0 ? 0 : side(t, spare, across))
  }
  return slack
}

/**
 * Where every piece of a strip leaves something free on the same side, that goes to the spare beside the strip.
 * After K. Fleszar, Computers & OR 40, 2013, who calls it justification.
 */
function justify(t: CutTrees, from: number) {
  for (let strip = from; t.parent[strip]! >= 0; strip = t.parent[strip]!) {
    const beside = t.parent[strip]!
    const across = t.across[beside]!
    const slack = slackOf(t, strip, across)
    if (slack <= 0 || slack === Infinity) continue
    for (let child = t.first[strip]!; child >= 0; ) {
      const after = t.next[child]!
      narrow(t, child, across, slack)
      child = after
    }
    lengthen(t, strip, across, -slack)
    joinSpares(t, strip)
    let spare = spareOf(t, beside)
    if (spare < 0) {
      spare = makeNode(t, beside, t.board[beside]!, t.length[beside]!, t.width[beside]!)
      lengthen(t, spare, across, slack - side(t, spare, across))
    } else lengthen(t, spare, across, slack)
    list(t, spare)
  }
}

/** A node becomes spare and joins the spare beside it; a cut node that is spare altogether becomes one too. */
function becomeSpare(t: CutTrees, from: number) {
  for (let node = from; ; ) {
    t.what[node] = SPARE
    t.first[node] = -1
    const parent = t.parent[node]!
    if (parent < 0) return list(t, node)
    const other = spareOf(t, parent, node)
    if (other >= 0) {
      lengthen(t, node, t.across[parent]!, side(t, other, t.across[parent]!))
      drop(t, other)
    }
    if (t.first[parent] !== node || t.next[node]! >= 0) {
      list(t, node)
      return justify(t, parent)
    }
    freeNode(t, node)
    node = parent
  }
}

function release(t: CutTrees, node: number, out: number[]) {
  if (t.what[node] === PIECE) {
    t.nodeOf[t.piece[node]!] = -1
    out.push(t.piece[node]!)
    return
  }
  unlist(t, node)
  for (let child = t.what[node] === CUT ? t.first[node]! : -1; child >= 0; ) {
    const after = t.next[child]!
    release(t, child, out)
    freeNode(t, child)
    child = after
  }
}

/** Takes everything off a node; the pieces are added to those that are out. */
export function clearNode(t: CutTrees, node: number, out: number[]) {
  release(t, node, out)
  becomeSpare(t, node)
}
