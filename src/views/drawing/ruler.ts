import type { Point, Shape } from './drawing.ts'
import { at, text } from './shapes.ts'

export const RULER_MM = 100

/** Length of a mark by what it stands at. */
const markMm = (at: number): number => (at % 10 === 0 ? 4 : at % 5 === 0 ? 3 : 2)

/** A ruler of 100 mm to hold a real one against, from its zero to the right, marks upwards. */
export function ruler({ xMm, yMm }: Point): Shape[] {
  const marks = Array.from({ length: RULER_MM + 1 }, (_, mark): readonly [Point, Point] => [
    at(xMm + mark, yMm),
    at(xMm + mark, yMm + markMm(mark)),
  ])
  const base = [at(xMm, yMm), at(xMm + RULER_MM, yMm)] as const
  return [
    { kind: 'segments', role: 'mark', segments: [base, ...marks] },
    text(at(xMm, yMm + 4.8), '0', { sizeMm: 2.4, anchor: 'middle' }),
    text(at(xMm + RULER_MM / 2, yMm + 4.8), '50', { sizeMm: 2.4, anchor: 'middle' }),
    text(at(xMm + RULER_MM, yMm + 4.8), '100 mm', { sizeMm: 2.4, anchor: 'middle' }),
  ]
}
