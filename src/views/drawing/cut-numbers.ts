import type { Cut } from '../../schema/cut-list.ts'
import { type Box, freePlace } from '../chart/free-place.ts'
import type { Point, Shape } from './drawing.ts'
import type { Taken } from './labels.ts'
import { onPaper, type Placement } from './placed.ts'
import { at, circle, textAround } from './shapes.ts'

/** Size of the rings: smaller where there are many. */
const MANY_CUTS = 50
const radiusMm = (cuts: number): number => (cuts > MANY_CUTS ? 1.6 : 2)
const TYPE_PER_RADIUS = 1.05

/** Shares of the way along a cut where its number may stand, in order of liking: the ends first, the middle last. */
const STEPS = 12
const SHARES = Array.from({ length: STEPS + 1 }, (_, step) => step / (2 * STEPS)).flatMap((share) => [
  share,
  1 - share,
])

/** Places along a cut, at last those that only touch it, a radius to either side. */
function placesOn(
  { direction, atMm, piece }: Cut,
  kerfMm: number,
  placement: Placement,
  radius: number,
): Point[] {
  const middle = atMm + kerfMm / 2
  const across = direction === 'across'
  const [from, to] = across
    ? [at(middle, piece.yMm), at(middle, piece.yMm + piece.widthMm)]
    : [at(piece.xMm, middle), at(piece.xMm + piece.lengthMm, middle)]
  const [start, end] = [onPaper(from, placement), onPaper(to, placement)]
  const on = SHARES.map((share) =>
    at(start.xMm + share * (end.xMm - start.xMm), start.yMm + share * (end.yMm - start.yMm)),
  )
  const aside = [radius, -radius].flatMap((by) =>
    on.map(({ xMm, yMm }) => (across ? at(xMm + by, yMm) : at(xMm, yMm + by))),
  )
  return [...on, ...aside]
}

/** How long a cut is: the shortest have the fewest places for their number and choose first. */
const lengthOf = ({ direction, piece }: Cut): number =>
  direction === 'across' ? piece.widthMm : piece.lengthMm

/** The box around boxes: what lies outside it is in the way of none of them. */
const around = (boxes: readonly Box[]): Box => ({
  left: Math.min(...boxes.map(({ left }) => left)),
  right: Math.max(...boxes.map(({ right }) => right)),
  top: Math.min(...boxes.map(({ top }) => top)),
  bottom: Math.max(...boxes.map(({ bottom }) => bottom)),
})

const meet = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom

/** The number of each cut in a ring on its kerf, clear of labels and of other numbers where that can be. */
export function cutNumbers(
  cuts: readonly Cut[],
  kerfMm: number,
  placement: Placement,
  taken: Taken,
): Shape[] {
  const radius = radiusMm(cuts.length)
  const reach = radius + 0.15
  const shortestFirst = [...cuts].sort((a, b) => lengthOf(a) - lengthOf(b))
  return shortestFirst.flatMap((cut) => {
    const boxes = placesOn(cut, kerfMm, placement, radius).map(({ xMm, yMm }) => ({
      left: xMm - reach,
      right: xMm + reach,
      top: yMm - reach,
      bottom: yMm + reach,
    }))
    const whole = around(boxes)
    const near = taken.boxes.filter((other) => meet(other, whole))
    const box = freePlace(boxes, { boxes: near, lines: [] })
    if (box === undefined) return []
    taken.boxes.push(box)
    const middle = at((box.left + box.right) / 2, (box.top + box.bottom) / 2)
    return [
      circle('face', middle, radius),
      textAround(middle, String(cut.step), {
        sizeMm: TYPE_PER_RADIUS * radius * (cut.step > 99 ? 0.75 : 1),
        role: 'heading',
      }),
    ]
  })
}
