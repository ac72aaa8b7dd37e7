import type { Layer, Point, Shape } from './drawing.ts'
import { at } from './shapes.ts'

/** Where the origin of a thing lies on the paper, and how large it is drawn: 0.2 for 1:5. */
export interface Placement {
  origin: Point
  scale: number
}

/** A point of the thing as a point of the paper. */
export const onPaper = ({ xMm, yMm }: Point, { origin, scale }: Placement): Point =>
  at(origin.xMm + scale * xMm, origin.yMm + scale * yMm)

/** A shape of the thing on the paper. Type keeps its size, whatever the scale. */
export function placed(shape: Shape, placement: Placement): Shape {
  const there = (point: Point) => onPaper(point, placement)
  switch (shape.kind) {
    case 'segments':
      return { ...shape, segments: shape.segments.map(([from, to]) => [there(from), there(to)] as const) }
    case 'polygon':
      return { ...shape, points: shape.points.map(there) }
    case 'circle':
      return { ...shape, at: there(shape.at), radiusMm: placement.scale * shape.radiusMm }
    case 'text':
      return { ...shape, at: there(shape.at) }
  }
}

/** A layer moved on the paper, its window with it. */
export function moved({ shapes, window }: Layer, by: Point): Layer {
  const placement = { origin: by, scale: 1 }
  return {
    shapes: shapes.map((shape) => placed(shape, placement)),
    ...(window !== undefined && { window: { ...window, ...onPaper(window, placement) } }),
  }
}
