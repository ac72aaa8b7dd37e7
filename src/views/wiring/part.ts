import type { Point, Shape } from '../drawing/drawing.ts'
import { at, textAround } from '../drawing/shapes.ts'
import { shortened, typeWidthMm } from '../drawing/type-width.ts'

/** A part of the diagram that hangs on a wire from above: how far it reaches from that wire, and how it is drawn. */
export interface Part {
  leftMm: number
  rightMm: number
  heightMm: number
  /** The wire enters at this point and leaves right below it. */
  drawn: (top: Point) => Shape[]
}

/** Name and value beside a symbol; the longest that may stand there. */
const LONGEST_MM = 30
const NAME_MM = 2.8

export const below = ({ xMm, yMm }: Point, downMm: number): Point => at(xMm, yMm - downMm)
export const beside = ({ xMm, yMm }: Point, rightMm: number): Point => at(xMm + rightMm, yMm)

/** Words as they fit beside a symbol. */
const fitted = (words: string): string => shortened(words, LONGEST_MM, NAME_MM, 'heading')

/** Width of the widest of some lines beside a symbol, mm. */
export const besideWidthMm = (lines: readonly string[]): number =>
  Math.max(0, ...lines.map((words) => 1.1 * typeWidthMm(fitted(words), NAME_MM)))

const LINE_MM = 3.9

/** Lines of words around a middle height: the first, the name, is bold when there are several. */
export function lines(middle: Point, words: readonly string[], anchor: 'start' | 'end' = 'start'): Shape[] {
  const top = middle.yMm + ((words.length - 1) * LINE_MM) / 2
  return words.map((line, index) =>
    textAround(at(middle.xMm, top - index * LINE_MM), fitted(line), {
      anchor,
      sizeMm: NAME_MM,
      role: index === 0 && words.length > 1 ? 'heading' : 'text',
    }),
  )
}
