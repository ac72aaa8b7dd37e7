import type { Point, Shape } from './drawing.ts'
import { type Corner, project } from './isometric.ts'
import { polygon } from './shapes.ts'

/** An upright block between two opposite corners, the first with the lesser numbers. */
export interface Block {
  from: Corner
  to: Corner
}

/** A board as the blocks it is made of: one, or several around its window. */
export type Board = readonly Block[]

type Cell = readonly [number, number, number]

/** Faces that are seen: the one towards the front, the right one and the top; with the two ways along each. */
const FACES: readonly { normal: Cell; ways: readonly [Cell, Cell] }[] = [
  {
    normal: [0, -1, 0],
    ways: [
      [1, 0, 0],
      [0, 0, 1],
    ],
  },
  {
    normal: [1, 0, 0],
    ways: [
      [0, 1, 0],
      [0, 0, 1],
    ],
  },
  {
    normal: [0, 0, 1],
    ways: [
      [1, 0, 0],
      [0, 1, 0],
    ],
  },
]

const DUST_MM = 1e-6
const AXES = [0, 1, 2] as const

const plus = (a: Cell, b: Cell): Cell => [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
const minus = (a: Cell, b: Cell): Cell => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
const keyOf = (cell: Cell): string => cell.join()

/** Every place along an axis where some board begins or ends, each once. */
function levelsOf(boards: readonly Board[], axis: 0 | 1 | 2): number[] {
  const all = boards.flatMap((board) => board.flatMap(({ from, to }) => [from[axis], to[axis]]))
  const sorted = all.sort((a, b) => a - b)
  return sorted.filter((level, index) => index === 0 || level - sorted[index - 1]! > DUST_MM)
}

const range = (from: number, to: number): number[] =>
  Array.from({ length: Math.max(0, to - from) }, (_, index) => from + index)

/** Boards parted along all their faces into cells, from the farthest to the nearest, and whose each cell is. */
interface Parted {
  cells: Cell[]
  ownerOf: (cell: Cell) => number | undefined
  cornerOf: (cell: Cell) => Point
}

function parted(boards: readonly Board[]): Parted {
  const levels = AXES.map((axis) => levelsOf(boards, axis))
  const placesOf = ({ from, to }: Block, axis: 0 | 1 | 2): number[] => {
    const [first, end] = [from[axis], to[axis]].map((mm) =>
      (levels[axis] ?? []).findIndex((level) => Math.abs(level - mm) <= DUST_MM),
    )
    return range(first ?? 0, end ?? 0)
  }
  const cellsOf = (block: Block): Cell[] =>
    placesOf(block, 0).flatMap((x) =>
      placesOf(block, 1).flatMap((y) => placesOf(block, 2).map((z): Cell => [x, y, z])),
    )
  const owners = new Map<string, number>()
  const all = boards.flatMap((board, owner) =>
    board.flatMap((block) => cellsOf(block).map((cell) => ({ cell, owner }))),
  )
  // Where two boards cross, the first one has the wood.
  const first = all.filter(({ cell, owner }) => {
    const isNew = !owners.has(keyOf(cell))
    if (isNew) owners.set(keyOf(cell), owner)
    return isNew
  })
  const nearness = ([x, y, z]: Cell) => x - y + z
  return {
    cells: first.map(({ cell }) => cell).sort((a, b) => nearness(a) - nearness(b)),
    ownerOf: (cell) => owners.get(keyOf(cell)),
    cornerOf: ([x, y, z]) => project([levels[0]?.[x] ?? 0, levels[1]?.[y] ?? 0, levels[2]?.[z] ?? 0]),
  }
}

/** A face of a board that is seen unless a later one covers it, with those of its sides that are edges of the board. */
export interface SolidFace {
  /** Which of the boards it belongs to. */
  board: number
  points: readonly Point[]
  edges: readonly (readonly [Point, Point])[]
}

/**
 * Faces of boards that may cross each other, from the farthest to the nearest, so that the near hides the far; no seams
 * inside a board are among their edges. Geometry: cells of one grid hide each other in the order of their indices.
 */
export function solidFaces(boards: readonly Board[]): SolidFace[] {
  const { cells, ownerOf, cornerOf } = parted(boards)
  return cells.flatMap((cell) => {
    const board = ownerOf(cell) ?? 0
    return FACES.filter(({ normal }) => ownerOf(plus(cell, normal)) === undefined).map(
      ({ normal, ways: [along, up] }): SolidFace => {
        // A face lies at the near side of its cell: towards the front that is the lower one, else the upper one.
        const start = normal[1] < 0 ? cell : plus(cell, normal)
        const corners = [start, plus(start, along), plus(plus(start, along), up), plus(start, up)]
        const points = corners.map(cornerOf)
        const beside = [minus(cell, up), plus(cell, along), plus(cell, up), minus(cell, along)]
        const goesOn = (next: Cell): boolean =>
          ownerOf(next) === board && ownerOf(plus(next, normal)) === undefined
        return {
          board,
          points,
          edges: beside.flatMap((next, index) => {
            const [from, to] = [points[index], points[(index + 1) % points.length]]
            return goesOn(next) || from === undefined || to === undefined ? [] : [[from, to] as const]
          }),
        }
      },
    )
  })
}

/** Faces as they are drawn: bare paper that covers what lies behind, and their edges. */
export const faceShapes = (faces: readonly SolidFace[]): Shape[] =>
  faces.flatMap(({ points, edges }) => [
    polygon('paper', points),
    ...(edges.length === 0 ? [] : [{ kind: 'segments' as const, role: 'hole' as const, segments: edges }]),
  ])
