import { dualFeasibleFunctions } from './dual-feasible.ts'
import type { Job } from './job.ts'

/** Keeps a sum of fractions from being rounded up by a rounding error. */
const ROUNDING = 1e-7

/** Equal parts as one kind, with every way they may lie on any board. */
interface Kind {
  length: number
  width: number
  count: number
  ways: number
}

function kindsOf(job: Job): Kind[] {
  const kinds = new Map<string, Kind>()
  for (let piece = 0; piece < job.partOf.length; piece++) {
    const row = job.ways.subarray(piece * job.boards.length, (piece + 1) * job.boards.length)
    const ways = row.reduce((all, way) => all | way, 0)
    const [length, width] = [job.lengthUm[piece]!, job.widthUm[piece]!]
    const key = `${length} ${width} ${ways}`
    const kind = kinds.get(key) ?? { length, width, count: 0, ways }
    kinds.set(key, { ...kind, count: kind.count + 1 })
  }
  return [...kinds.values()]
}

/** Fewest boards that hold the area of the parts, largest boards first. */
function areaBound(job: Job): number {
  const areas = job.boards
    .flatMap((board) => Array.from({ length: board.count }, () => board.lengthUm * board.widthUm))
    .sort((a, b) => b - a)
  const largest = areas[0] ?? 0
  let missing = job.areaUm2.reduce((sum, area) => sum + area, 0)
  let boards = 0
  while (missing > 0) missing -= areas[boards++] ?? largest
  return boards
}

/** Values of one function for both sides of every kind along one side of the board. */
interface Row {
  ofLength: Float64Array
  ofWidth: Float64Array
}

function rowsFor(kinds: readonly Kind[], boardSide: number): Row[] {
  const sides = kinds.flatMap(({ length, width }) => [length, width]).filter((side) => side <= boardSide)
  return dualFeasibleFunctions(sides, boardSide).map((f) => ({
    ofLength: Float64Array.from(kinds, ({ length }) => f(length, boardSide)),
    ofWidth: Float64Array.from(kinds, ({ width }) => f(width, boardSide)),
  }))
}

/** Sum of f(length) g(width) over all pieces, with the smaller of both turnings where both are free. */
function weight(kinds: readonly Kind[], along: Row, across: Row): number {
  let sum = 0
  for (let kind = 0; kind < kinds.length; kind++) {
    const { ways, count } = kinds[kind]!
    const given = along.ofLength[kind]! * across.ofWidth[kind]!
    const turned = along.ofWidth[kind]! * across.ofLength[kind]!
    sum += count * (ways === 1 ? given : ways === 2 ? turned : Math.min(given, turned))
  }
  return sum
}

/**
 * Bound from dual feasible functions in both directions. With turning the smaller of both products counts: in any
 * layout each piece has one of the two values.
 */
function dualBound(kinds: readonly Kind[], lengthUm: number, widthUm: number): number {
  const along = rowsFor(kinds, lengthUm)
  const across = rowsFor(kinds, widthUm)
  let most = 0
  for (const f of along) for (const g of across) most = Math.max(most, weight(kinds, f, g))
  return Math.ceil(most - ROUNDING)
}

/** Whether two pieces lie on one board side by side or one above the other, in some turning. */
function goTogether(a: Kind, b: Kind, lengthUm: number, widthUm: number): boolean {
  const lain = (kind: Kind) => [
    ...(kind.ways & 1 ? [[kind.length, kind.width] as const] : []),
    ...(kind.ways & 2 ? [[kind.width, kind.length] as const] : []),
  ]
  return lain(a).some(([l, w]) => lain(b).some(([l2, w2]) => l + l2 <= lengthUm || w + w2 <= widthUm))
}

/** Pieces of which no two go on one board, taken greedily from the one with the longest short side. */
function pairBound(kinds: readonly Kind[], lengthUm: number, widthUm: number): number {
  const apart: Kind[] = []
  let pieces = 0
  for (const kind of [...kinds].sort((a, b) => Math.min(b.length, b.width) - Math.min(a.length, a.width))) {
    if (apart.some((other) => goTogether(kind, other, lengthUm, widthUm))) continue
    apart.push(kind)
    pieces += goTogether(kind, kind, lengthUm, widthUm) ? 1 : kind.count
  }
  return pieces
}

/**
 * Fewest boards that any layout can need, whatever the kind of cut: the largest of the area bound, the bound from
 * parts that exclude each other and the bound from dual feasible functions. Boards of several sizes count as one
 * that covers each of them, which weakens the last two but keeps them true.
 * Source: Fekete & Schepers, 2004; with turning after Dell'Amico, Martello & Vigo, Discrete Applied Math. 118, 2002.
 */
export function fewestBoards(job: Job): number {
  const lengthUm = Math.max(...job.boards.map((board) => board.lengthUm))
  const widthUm = Math.max(...job.boards.map((board) => board.widthUm))
  const kinds = kindsOf(job)
  return Math.max(areaBound(job), pairBound(kinds, lengthUm, widthUm), dualBound(kinds, lengthUm, widthUm))
}
