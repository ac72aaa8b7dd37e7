import { type Box, freePlace } from '../chart/free-place.ts'
import type { Point, Rectangle, Shape } from './drawing.ts'
import { at, rectangle, TYPE_MM, textAround } from './shapes.ts'
import { typeWidthMm } from './type-width.ts'

const AIR_MM = 0.5

const boxAround = ({ xMm, yMm }: Point, widthMm: number, heightMm: number): Box => ({
  left: xMm - widthMm / 2,
  right: xMm + widthMm / 2,
  top: yMm - heightMm / 2,
  bottom: yMm + heightMm / 2,
})

export const boxOf = ({ xMm, yMm, lengthMm, widthMm }: Rectangle): Box => ({
  left: xMm,
  right: xMm + lengthMm,
  top: yMm,
  bottom: yMm + widthMm,
})

/** Places that labels have taken on one drawing. Boxes are upright, with y up as on the paper. */
export interface Taken {
  boxes: Box[]
}

interface Label {
  words: string
  /** Middles it may stand around, in order of liking. */
  middles: readonly Point[]
  sizeMm?: number
  /** true to lay bare paper under it. */
  patch?: boolean
}

/** A label at the first of its places that covers least of the others; the place is then taken. */
export function labelShapes(
  { words, middles, sizeMm = TYPE_MM, patch = true }: Label,
  taken: Taken,
): Shape[] {
  const [width, height] = [typeWidthMm(words, sizeMm) + 2 * AIR_MM, sizeMm + AIR_MM]
  const box = freePlace(
    middles.map((middle) => boxAround(middle, width, height)),
    { boxes: taken.boxes, lines: [] },
  )
  if (box === undefined) return []
  taken.boxes.push(box)
  const [xMm, yMm] = [(box.left + box.right) / 2, (box.top + box.bottom) / 2]
  const paper = rectangle('paper', { xMm: box.left, yMm: box.top, lengthMm: width, widthMm: height })
  return [...(patch ? [paper] : []), textAround(at(xMm, yMm), words, { sizeMm })]
}
