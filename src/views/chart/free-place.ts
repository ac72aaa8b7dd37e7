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
  const known = lines.map((line) => ({ line, rising: isRising(line) }))
  const linesIn = (box: Box) => known.filter(({ line, rising }) => runsThrough(line, rising, box)).length
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

/** Curves over frequency only go to the right, so that the pieces near a box can be looked up. */
const isRising = (line: readonly Point[]): boolean =>
  line.every(([x], index) => index === 0 || x >= (line[index - 1]?.[0] ?? x))

function runsThrough(line: readonly Point[], rising: boolean, box: Box): boolean {
  for (let index = rising ? firstFrom(line, box.left) : 0; index < line.length; index += 1) {
    const point = line[index]
    const before = line[index - 1] ?? point
    if (point === undefined || before === undefined || (rising && before[0] > box.right)) return false
    if (meets(before, point, box)) return true
  }
  return false
}

/** Index of the first point of a rising line at or right of an x; its length when there is none. */
function firstFrom(line: readonly Point[], x: number): number {
  let [low, high] = [0, line.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((line[middle]?.[0] ?? x) < x) low = middle + 1
    else high = middle
  }
  return low
}

/** Whether a straight piece meets a box: the part of it between the sides must not be empty, Liang and Barsky 1984. */
function meets([x0, y0]: Point, [x1, y1]: Point, { left, right, top, bottom }: Box): boolean {
  // Most pieces of a curve lie wholly beside the box; a label is tried at hundreds of places.
  if ((x0 < left && x1 < left) || (x0 > right && x1 > right)) return false
  if ((y0 < top && y1 < top) || (y0 > bottom && y1 > bottom)) return false
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
