import { describe, expect, it } from 'vitest'
import {
  boardsOpen,
  CUT,
  type CutTrees,
  emptyTrees,
  openBoard,
  PIECE,
  SPARE,
  sparesListed,
  takesMore,
} from '../../../../src/core/shop/layout/cut-tree.ts'
import { clearNode, layPiece } from '../../../../src/core/shop/layout/cut-tree-change.ts'
import { type Job, jobsOf } from '../../../../src/core/shop/layout/job.ts'
import { randomFrom } from '../../../../src/core/shop/layout/random.ts'
import { sheetsOf } from '../../../../src/core/shop/layout/sheets-of-trees.ts'
import { sheetFaults } from './sheet-faults.ts'

const SEED = 4711

const childrenOf = (t: CutTrees, node: number): number[] => {
  const children: number[] = []
  for (let child = t.first[node]!; child >= 0; child = t.next[child]!) children.push(child)
  return children
}

/** What is wrong below one node by the rules that the trees promise, counted from the rectangles alone. */
function nodeFaults(t: CutTrees, node: number): string[] {
  const [length, width] = [t.length[node]!, t.width[node]!]
  const wrong = length > 0 && width > 0 ? [] : [`node ${node} has no area`]
  const isListed = Array.from(t.spares.subarray(0, sparesListed(t))).includes(node)
  const takesPieces = t.what[node] === SPARE && Math.min(length, width) >= t.leastSide
  if (isListed !== takesPieces) wrong.push(`node ${node} is listed: ${isListed}`)
  if (t.what[node] !== CUT) return wrong
  const children = childrenOf(t, node)
  const isAcross = t.across[node] === 1
  const along = (child: number) => (isAcross ? t.length[child]! : t.width[child]!)
  const beside = (child: number) => (isAcross ? t.width[child]! : t.length[child]!)
  const sum = children.reduce((total, child) => total + along(child), 0)
  if (children.length < 2) wrong.push(`node ${node} is cut into ${children.length}`)
  if (sum !== along(node)) wrong.push(`node ${node}: children take ${sum} of ${along(node)}`)
  if (children.some((child) => beside(child) !== beside(node)))
    wrong.push(`node ${node}: a child is not as wide`)
  if (children.filter((child) => t.what[child] === SPARE).length > 1) wrong.push(`node ${node}: two spares`)
  if (children.some((child) => t.what[child] === CUT && t.across[child] === t.across[node]))
    wrong.push(`node ${node}: directions do not alternate`)
  return [...wrong, ...children.flatMap((child) => nodeFaults(t, child))]
}

const treeFaults = (t: CutTrees): string[] =>
  Array.from(t.roots.subarray(0, boardsOpen(t))).flatMap((root) => nodeFaults(t, root))

/** Pieces on the sheets, each as often as it lies there. */
const lying = (t: CutTrees, job: Job): number[] =>
  sheetsOf(t, job)
    .flatMap(({ pieces }) => pieces)
    .sort((a, b) => a - b)

const faults = (t: CutTrees, job: Job): string[] => [
  ...treeFaults(t),
  ...sheetsOf(t, job).flatMap((sheet) => sheetFaults(job, sheet)),
]

function treesOf(job: Job, boards: number): CutTrees {
  const t = emptyTrees(job.partOf.length, boards, job.leastSideUm)
  for (let at = 0; at < boards; at++) openBoard(t, 0, job.boards[0]!.lengthUm, job.boards[0]!.widthUm)
  return t
}

describe(`cut trees, laid and cleared at random, seed ${SEED}`, () => {
  const random = randomFrom(SEED)
  const whole = (from: number, to: number) => from + Math.floor(random() * (to - from + 1))
  const drawn = <T>(list: readonly T[]): T | undefined => list[whole(0, list.length - 1)]

  /** Lays a piece that is out on any spare that takes it. */
  function laySome(t: CutTrees, job: Job, out: Set<number>) {
    const spare = drawn(Array.from(t.spares.subarray(0, sparesListed(t))))
    const piece = drawn([...out])
    if (spare === undefined || piece === undefined) return
    const turned = random() < 0.5
    const [a, b] = [job.lengthUm[piece]!, job.widthUm[piece]!]
    const [length, width] = turned ? [b, a] : [a, b]
    if (length > t.length[spare]! || width > t.width[spare]!) return
    layPiece(t, spare, piece, length, width, turned, random() < 0.5)
    out.delete(piece)
  }

  /** Takes a piece off, or all that lies in a group around it. */
  function clearSome(t: CutTrees, out: Set<number>) {
    let node = drawn(Array.from(t.nodeOf)) ?? -1
    if (node < 0) return
    for (let up = whole(0, 3); up > 0 && t.parent[node]! >= 0; up--) node = t.parent[node]!
    const removed: number[] = []
    clearNode(t, node, removed)
    for (const one of removed) out.add(one)
  }

  // Few different sides, so that cuts without a rest, joined strips and dissolved cuts come often.
  const cases = Array.from({ length: 8 }, (_, index) => ({
    index,
    sides: whole(3, 30),
    pieces: whole(5, 25),
  }))

  it.each(cases)(
    'case $index: every change keeps pieces apart, inside and to be sawn',
    ({ sides, pieces }) => {
      const [job] = jobsOf(
        Array.from({ length: pieces }, () => ({
          lengthMm: 10 * whole(1, sides),
          widthMm: 10 * whole(1, sides),
        })),
        [{ lengthMm: 20 * sides, widthMm: 13 * sides, count: 3 }],
        0,
      )
      const t = treesOf(job!, 3)
      const all = [...job!.partOf.keys()]
      const out = new Set(all)
      for (let change = 0; change < 400; change++) {
        expect(takesMore(t)).toBe(true)
        if (random() < 0.6) laySome(t, job!, out)
        else clearSome(t, out)
        expect(faults(t, job!)).toEqual([])
        expect([...lying(t, job!), ...out].sort((a, b) => a - b)).toEqual(all)
      }
      for (let at = 0; at < boardsOpen(t); at++) clearNode(t, t.roots[at]!, [])
      // Nothing is lost: the boards are whole again, and only their three nodes are in use.
      expect(faults(t, job!)).toEqual([])
      expect(Array.from(t.roots, (root) => t.what[root])).toEqual([SPARE, SPARE, SPARE])
      expect(t.counts.at(-1)).toBe(3)
    },
  )

  it('what all pieces of a strip leave free on one side goes to the spare beside the strip', () => {
    // Strip of 50 x 100 with 50 x 40 and 30 x 40: without the first the strip is 30 wide, 70 are free beside it.
    const [job] = jobsOf(
      [
        { lengthMm: 50, widthMm: 40 },
        { lengthMm: 30, widthMm: 40 },
      ],
      [{ lengthMm: 100, widthMm: 100 }],
      0,
    )
    const t = treesOf(job!, 1)
    layPiece(t, t.roots[0]!, 0, 50_000, 40_000, false, true)
    const above = Array.from(t.spares.subarray(0, sparesListed(t))).find(
      (node) => t.length[node] === 50_000 && t.width[node] === 60_000,
    )
    layPiece(t, above!, 1, 30_000, 40_000, false, false)
    clearNode(t, t.nodeOf[0]!, [])
    const spares = Array.from(t.spares.subarray(0, sparesListed(t)), (node) => [
      t.length[node]! / 1000,
      t.width[node]! / 1000,
    ])
    expect(spares).toContainEqual([70, 100])
    expect(spares).toContainEqual([30, 60])
    expect(t.what[t.nodeOf[1]!]).toBe(PIECE)
    expect(faults(t, job!)).toEqual([])
  })
})
