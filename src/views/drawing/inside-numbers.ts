import type { Point, Rectangle, Shape } from './drawing.ts'
import { sizeSaid } from './figures.ts'
import type { InsideBoards } from './inside-boards.ts'
import { onPaper, type Placement } from './placed.ts'
import { at, circle, TYPE_MM, text, textAround } from './shapes.ts'
import type { SolidFace } from './solid-boards.ts'
import { typeWidthMm } from './type-width.ts'

const RING_MM = 1.9
const LIST_LINE_MM = 4.6

const ringed = (place: Point, number: number): Shape[] => [
  circle('face', place, RING_MM),
  textAround(place, String(number), { sizeMm: 2.2, role: 'heading' }),
]

/** true for a point inside a convex polygon. */
function isIn({ xMm, yMm }: Point, points: readonly Point[]): boolean {
  const sides = points.map((from, index) => {
    const to = points[(index + 1) % points.length] ?? from
    return (to.xMm - from.xMm) * (yMm - from.yMm) - (to.yMm - from.yMm) * (xMm - from.xMm)
  })
  return sides.every((side) => side > 0) || sides.every((side) => side < 0)
}

const middleOf = (points: readonly Point[]): Point =>
  at(
    points.reduce((sum, { xMm }) => sum + xMm, 0) / points.length,
    points.reduce((sum, { yMm }) => sum + yMm, 0) / points.length,
  )

/** How wide a face is at its narrowest: its area over its longest side. */
function narrowness(points: readonly Point[]): number {
  const sides = points.map((from, index) => ({ from, to: points[(index + 1) % points.length] ?? from }))
  const twice = sides.reduce((sum, { from, to }) => sum + from.xMm * to.yMm - to.xMm * from.yMm, 0)
  const longest = Math.max(...sides.map(({ from, to }) => Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm)))
  return Math.abs(twice) / 2 / longest
}

/**
 * The number of each kind of board inside, in a ring on the widest of its faces whose middle is in sight.
 * @param faces   faces of all boards inside, in the order they are drawn
 * @param covers  what is drawn after them
 */
export function insideNumbers(
  inside: readonly InsideBoards[],
  faces: readonly SolidFace[],
  placement: Placement,
  covers: readonly Shape[],
): Shape[] {
  const kinds = inside.flatMap(({ boards }, kind) => boards.map(() => kind))
  const drawn = faces.map(({ board, points }) => ({
    kind: kinds[board],
    points: points.map((point) => onPaper(point, placement)),
  }))
  const taken: Point[] = []
  const inSight = (place: Point, order: number): boolean =>
    drawn.slice(order + 1).every(({ points }) => !isIn(place, points)) &&
    covers.every((cover) => cover.kind !== 'polygon' || !isIn(place, cover.points))
  const isFree = ({ xMm, yMm }: Point): boolean =>
    taken.every((other) => Math.hypot(other.xMm - xMm, other.yMm - yMm) > 2 * RING_MM)
  return inside.flatMap((_, kind) => {
    const places = drawn
      .map((face, order) => ({ ...face, order, middle: middleOf(face.points) }))
      .filter((face) => face.kind === kind)
      .sort((a, b) => narrowness(b.points) - narrowness(a.points))
    const seen = places.filter(({ middle, order }) => inSight(middle, order))
    const place = seen.find(({ middle }) => isFree(middle)) ?? seen[0]
    // A board of which nothing is in sight is only listed.
    if (place === undefined) return []
    taken.push(place.middle)
    return ringed(place.middle, kind + 1)
  })
}

/** What the numbers stand for, in the lower right corner. */
export function insideList(inside: readonly InsideBoards[], room: Rectangle): Shape[] {
  const lines = inside.map(({ panel }) => `${panel.id}, ${sizeSaid(panel)}`)
  const left = room.xMm + room.lengthMm - Math.max(0, ...lines.map((words) => typeWidthMm(words, TYPE_MM)))
  return lines.flatMap((words, index) => {
    const y = room.yMm + 2 + LIST_LINE_MM * (lines.length - 1 - index)
    return [...ringed(at(left - RING_MM - 1.5, y), index + 1), text(at(left, y - 1), words)]
  })
}
