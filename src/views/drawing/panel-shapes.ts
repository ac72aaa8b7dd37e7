import type { Hole, Panel } from '../../schema/panel.ts'
import type { LineRole, Shape } from './drawing.ts'
import { at, circle, cross, line, rectangle } from './shapes.ts'

/** The edge of a panel, from its lower left corner seen from outside. */
export const panelEdge = (
  { lengthMm, widthMm }: Pick<Panel, 'lengthMm' | 'widthMm'>,
  role: LineRole = 'outline',
) => rectangle(role, { xMm: 0, yMm: 0, lengthMm, widthMm })

/** The edge of a hole on its panel: a circle, or a rectangle for a slot. */
export function holeEdge({ xMm, yMm, diameterMm, slotWidthMm, slotHeightMm }: Hole): Shape {
  if (diameterMm !== null) return circle('hole', at(xMm, yMm), diameterMm / 2)
  const [lengthMm, widthMm] = [slotWidthMm ?? 0, slotHeightMm ?? 0]
  return rectangle('hole', { xMm: xMm - lengthMm / 2, yMm: yMm - widthMm / 2, lengthMm, widthMm })
}

/** Half of what a hole takes up, along x and along y. */
export const holeReach = ({ diameterMm, slotWidthMm, slotHeightMm }: Hole): { xMm: number; yMm: number } =>
  diameterMm === null
    ? { xMm: (slotWidthMm ?? 0) / 2, yMm: (slotHeightMm ?? 0) / 2 }
    : { xMm: diameterMm / 2, yMm: diameterMm / 2 }

/** A cross in the middle of a hole that reaches beyond its edge both ways. */
export function centreMark(hole: Hole, beyondMm: number, role: LineRole = 'centre'): Shape {
  const reach = holeReach(hole)
  return cross(role, at(hole.xMm, hole.yMm), reach.xMm + beyondMm, reach.yMm + beyondMm)
}

/** Strokes just inside the edges that get a band. */
export function bandShapes({ lengthMm, widthMm, bandedEdges }: Panel, inMm: number): Shape[] {
  const [right, top] = [lengthMm - inMm, widthMm - inMm]
  const ends = {
    left: [at(inMm, inMm), at(inMm, top)],
    right: [at(right, inMm), at(right, top)],
    bottom: [at(inMm, inMm), at(right, inMm)],
    top: [at(inMm, top), at(right, top)],
  } as const
  return bandedEdges.map((edge) => line('band', ...ends[edge]))
}
