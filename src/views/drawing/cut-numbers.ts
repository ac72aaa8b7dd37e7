import type { Cut } from '../../schema/cut-list.ts'
import { freePlace } from '../chart/free-place.ts'
import type { Point, Shape } from './drawing.ts'
import type { Taken } from './labels.ts'
import { onPaper, type Placement } from './placed.ts'
import { at, circle, textAround } from './shapes.ts'

const RADIUS_MM = 2
const SIZE_MM = 2.1
/** Shares of the way along a cut where its number may stand, in order of liking: its ends first. */
const SHARES = [0, 1, 0.12, 0.88, 0.25, 0.75, 0.37, 0.63, 0.5]

/** Places along a cut; its ends are a little inside so that numbers of crossing cuts keep apart. */
function placesOn({ direction, atMm, piece }: Cut, kerfMm: number, placement: Placement): Point[] {
  const middle = atMm + kerfMm / 2
  const [from, to] =
    direction === 'across'
      ? [at(middle, piece.yMm), at(middle, piece.yMm + piece.widthMm)]
      : [at(piece.xMm, middle), at(piece.xMm + piece.lengthMm, middle)]
  const [start, end] = [onPaper(from, placement), onPaper(to, placement)]
  return SHARES.map((share) =>
    at(start.xMm + share * (end.xMm - start.xMm), start.yMm + share * (end.yMm - start.yMm)),
  )
}

/** The number of each cut in a ring on its kerf, clear of labels and of other numbers where that can be. */
export function cutNumbers(
  cuts: readonly Cut[],
  kerfMm: number,
  placement: Placement,
  taken: Taken,
): Shape[] {
  return cuts.flatMap((cut) => {
    const reach = RADIUS_MM + 0.15
    const boxes = placesOn(cut, kerfMm, placement).map(({ xMm, yMm }) => ({
      left: xMm - reach,
      right: xMm + reach,
      top: yMm - reach,
      bottom: yMm + reach,
    }))
    const box = freePlace(boxes, { boxes: taken.boxes, lines: [] })
    if (box === undefined) return []
    taken.boxes.push(box)
    const middle = at((box.left + box.right) / 2, (box.top + box.bottom) / 2)
    return [
      circle('face', middle, RADIUS_MM),
      textAround(middle, String(cut.step), { sizeMm: cut.step > 99 ? 1.5 : SIZE_MM, role: 'heading' }),
    ]
  })
}
