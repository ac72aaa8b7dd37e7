import type { Point } from './curve-path.ts'

/** An upright rectangle that a label takes. */
export interface Box {
  left: number
  right: number
  top: number
  bottom: number
}

/** What is there already. */
export interface Occupied {
  boxes: readonly Box[]
  lines: readonly (readonly Point[])[]
}

/** Costs of covering a label and a line, and of standing between lines, where it is not clear which is meant. */
const COVERS_LABEL = 100
const COVERS_LINE = 10
const NEAR_ANOTHER_LINE = 1
/** So far from a label another line confuses. */
const NEAR = 9

/** The first of the places that covers least; the places come in order of liking. */
export function freePlace(places: readonly Box[], { boxes, lines }: Occupied): Box | undefined {
  const linesIn = (box: Box) => lines.filter((line) => runsThrough(line, box)).length
  const cost = (box: Box) =>
    COVERS_LABEL * boxes.filter((other) => overlap(box, other)).length +
    COVERS_LINE * linesIn(box) +
    NEAR_ANOTHER_LINE * Math.max(0, linesIn(widened(box, NEAR)) - 1)
  let best: { box: Box; cost: number } | undefined
  for (const box of places) {
    const here = cost(box)
    if (best === undefined || here < best.cost) best = { box, cost: here }
    if (best.cost === 0) break
  }
  return best?.box
}

const widened = ({ left, right, top, bottom }: Box, by: number): Box => ({
  left: left - by,
  right: right + by,
  top: top - by,
  bottom: bottom + by,
})

export const overlap = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom

export const inside = (box: Box, frame: Box): boolean =>
  box.left >= frame.left && box.right <= frame.right && box.top >= frame.top && box.bottom <= frame.bottom

function runsThrough(line: readonly Point[], box: Box): boolean {
  return line.some((point, index) => meets(line[index - 1] ?? point, point, box))
}

/** Whether a straight piece meets a box: the part of it between the sides must not be empty, Liang and Barsky 1984. */
function meets([x0, y0]: Point, [x1, y1]: Point, { left, right, top, bottom }: Box): boolean {
  const [fromX, toX] = shareBetween(x0, x1, left, right)
  const [fromY, toY] = shareBetween(y0, y1, top, bottom)
  return Math.max(fromX, fromY, 0) <= Math.min(toX, toY, 1)
}

/** Which shares of the way from one number to another lie between two bounds. */
function shareBetween(from: number, to: number, low: number, high: number): readonly [number, number] {
  const way = to - from
  if (way === 0) return from >= low && from <= high ? [0, 1] : [1, 0]
  const ends = [(low - from) / way, (high - from) / way] as const
  return ends[0] < ends[1] ? ends : [ends[1], ends[0]]
}
