import type { Point, Shape } from '../drawing/drawing.ts'
import { at } from '../drawing/shapes.ts'
import { below, beside, type Part } from './part.ts'
import { joint, wire } from './pens.ts'

/** A step of the supply on its way down two rails, plus left. */
export interface Rung {
  heightMm: number
  drawn: (plus: Point, minus: Point) => Shape[]
}

const both = (plus: Point, minus: Point, heightMm: number): Shape[] => [
  wire(plus, below(plus, heightMm)),
  wire(minus, below(minus, heightMm)),
]

/** A part in the plus wire. */
export const inLine = (part: Part): Rung => ({
  heightMm: part.heightMm,
  drawn: (plus, minus) => [...part.drawn(plus), wire(minus, below(minus, part.heightMm))],
})

const ABOVE_MM = 3
/** From the plus rail to the first part across, and between parts, mm. */
const AIR_MM = 4

/** Least distance between the rails for parts across them, mm. */
export const acrossWidthMm = (parts: readonly Part[]): number =>
  parts.reduce((sum, { leftMm, rightMm }) => sum + leftMm + rightMm + AIR_MM, AIR_MM)

/** Parts side by side from plus to minus. */
export function across(parts: readonly Part[]): Rung {
  const innerMm = Math.max(0, ...parts.map(({ heightMm }) => heightMm))
  const heightMm = innerMm + 2 * ABOVE_MM
  let endMm = AIR_MM
  const axes = parts.map(({ leftMm, rightMm }) => {
    const axis = endMm + leftMm
    endMm = axis + rightMm + AIR_MM
    return axis
  })
  return {
    heightMm,
    drawn: (plus, minus) => {
      const [upper, lower] = [below(plus, ABOVE_MM), below(minus, ABOVE_MM + innerMm)]
      const feet = axes.map((axis) => at(plus.xMm + axis, lower.yMm))
      return [
        ...both(plus, minus, heightMm),
        wire(upper, beside(upper, axes.at(-1) ?? 0)),
        wire(feet[0] ?? lower, lower),
        ...parts.flatMap((part, index) => {
          const top = beside(upper, axes[index] ?? 0)
          return [...part.drawn(top), wire(below(top, part.heightMm), feet[index] ?? lower)]
        }),
        ...[upper, lower, ...axes.slice(0, -1).map((axis) => beside(upper, axis)), ...feet.slice(1)].map(
          joint,
        ),
      ]
    },
  }
}

/** Both wires in something that is drawn around them. */
export const bothWires = (heightMm: number, around: (plus: Point, minus: Point) => Shape[]): Rung => ({
  heightMm,
  drawn: (plus, minus) => [...both(plus, minus, heightMm), ...around(plus, minus)],
})

export const heightOf = (rungs: readonly Rung[]): number =>
  rungs.reduce((sum, { heightMm }) => sum + heightMm, 0)

/** All rungs one below the other. */
export function ladder(rungs: readonly Rung[], plus: Point, minus: Point): Shape[] {
  let downMm = 0
  return rungs.flatMap((rung) => {
    const drawn = rung.drawn(below(plus, downMm), below(minus, downMm))
    downMm += rung.heightMm
    return drawn
  })
}
