import { at } from '../drawing/shapes.ts'
import { below, beside, type Part } from './part.ts'
import { joint, wire } from './pens.ts'

/** Air between parts that stand side by side, mm. */
const BETWEEN_MM = 3
/** Wire above and below parts that stand side by side, mm. */
const RAIL_MM = 3

const widest = (parts: readonly Part[], side: 'leftMm' | 'rightMm'): number =>
  Math.max(0, ...parts.map((part) => part[side]))

/** Parts one below the other on one wire. */
export const inSeries = (parts: readonly Part[]): Part => ({
  leftMm: widest(parts, 'leftMm'),
  rightMm: widest(parts, 'rightMm'),
  heightMm: parts.reduce((sum, { heightMm }) => sum + heightMm, 0),
  drawn: (top) => {
    let downMm = 0
    return parts.flatMap((part) => {
      const drawn = part.drawn(below(top, downMm))
      downMm += part.heightMm
      return drawn
    })
  },
})

/** Parts side by side between two rails; the wire enters and leaves in the middle of the rails. */
export function inParallel(parts: readonly Part[]): Part {
  const [only] = parts
  if (only !== undefined && parts.length === 1) return only
  const axes: number[] = []
  let endMm = 0
  for (const { leftMm, rightMm } of parts) {
    axes.push(endMm + leftMm)
    endMm += leftMm + rightMm + BETWEEN_MM
  }
  const [first, last] = [axes[0] ?? 0, axes.at(-1) ?? 0]
  const middle = (first + last) / 2
  const innerMm = Math.max(0, ...parts.map(({ heightMm }) => heightMm))
  const heightMm = innerMm + 2 * RAIL_MM
  return {
    leftMm: middle,
    rightMm: endMm - BETWEEN_MM - middle,
    heightMm,
    drawn: (top) => {
      const [upper, lower] = [below(top, RAIL_MM), below(top, RAIL_MM + innerMm)]
      const inner = axes.slice(1, -1).map((axis) => axis - middle)
      const joints = new Set([0, ...inner])
      return [
        wire(top, upper),
        wire(beside(upper, first - middle), beside(upper, last - middle)),
        wire(beside(lower, first - middle), beside(lower, last - middle)),
        wire(lower, below(top, heightMm)),
        ...parts.flatMap((part, index) => {
          const start = beside(upper, (axes[index] ?? 0) - middle)
          const end = below(start, part.heightMm)
          const rest = part.heightMm < innerMm ? [wire(end, at(end.xMm, lower.yMm))] : []
          return [...part.drawn(start), ...rest]
        }),
        ...[...joints].flatMap((x) => [joint(beside(upper, x)), joint(beside(lower, x))]),
      ]
    },
  }
}
