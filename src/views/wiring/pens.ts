import type { LineRole, Point, Polygon, Segments, Shape } from '../drawing/drawing.ts'
import { circle } from '../drawing/shapes.ts'

// A circuit is drawn with the pens of the workshop drawings, so that both stand on one sheet alike.

/** Wires, narrower than what they join. */
export const WIRE: LineRole = 'hole'
/** Symbols. */
export const SYMBOL: LineRole = 'outline'
/** The edge of what holds several parts: a box, a lead. */
export const AROUND: LineRole = 'guide'
/** What is filled: the dot of a joint. */
export const FILLED: LineRole = 'kerf'

/** A wire from point to point. */
export const wire = (...points: readonly Point[]): Segments => path(WIRE, points)

/** A line that bends. */
export const path = (role: LineRole, points: readonly Point[]): Segments => ({
  kind: 'segments',
  role,
  segments: points.slice(1).map((to, index) => [points[index]!, to] as const),
})

export const shape = (role: LineRole, points: readonly Point[]): Polygon => ({
  kind: 'polygon',
  role,
  points,
})

/** Where wires are joined. */
export const joint = (point: Point): Shape => circle(FILLED, point, 0.75)

/** Where a wire is taken off: a ring that lies on it. */
export const terminal = (point: Point): Shape => circle('face', point, 0.9)
