import type { PortEnds, Slot } from '../../schema/port.ts'

export type PortEnd = 'flanged' | 'free'

/** Added length of a flush round end over its radius; uniform velocity. Source: Rayleigh; 8/(3π). */
export const FLANGED_OVER_RADIUS = 8 / (3 * Math.PI)
/** Added length of a thin free end over its radius. Source: H. Levine & J. Schwinger, Phys. Rev. 73, 383 (1948). */
export const FREE_OVER_RADIUS = 0.6133

const OVER_RADIUS = { flanged: FLANGED_OVER_RADIUS, free: FREE_OVER_RADIUS } satisfies Record<PortEnd, number>

/** Added length of one round end, in the unit of the radius (> 0). Sources: at the two constants. */
export const roundEnd = (radius: number, end: PortEnd): number => OVER_RADIUS[end] * radius

/**
 * Added length of one flush rectangular end, in the unit of its sides (both > 0), uniform velocity.
 * Source: mean of 1/distance over the rectangle, the integral behind Rayleigh's 8/(3π); derived.
 */
export function flangedRectangleEnd(width: number, height: number): number {
  const [w, h] = [width, height]
  const q = Math.hypot(w, h)
  const integral =
    2 *
    (w * w * h * Math.log((h + q) / w) + w * h * h * Math.log((w + q) / h) + (w ** 3 + h ** 3 - q ** 3) / 3)
  return integral / (2 * Math.PI * w * h)
}

/**
 * Added length of one end of a slot, in mm. A slot that lies on a wall is half of one twice as high (mirror image);
 * a free end is taken as the flush one scaled as for round ends, for which no source was found.
 */
export function slotEnd(slot: Pick<Slot, 'widthMm' | 'heightMm' | 'onWall'>, end: PortEnd): number {
  const height = slot.onWall === true ? 2 * slot.heightMm : slot.heightMm
  const flanged = flangedRectangleEnd(slot.widthMm, height)
  return end === 'flanged' ? flanged : (flanged * FREE_OVER_RADIUS) / FLANGED_OVER_RADIUS
}

// Far ends act as point sources: half the solid angle doubles the pressure of a flush neighbour.
const NEIGHBOUR = { flanged: 1 / 2, free: 1 / 4 } satisfies Record<PortEnd, number>

/**
 * Added length at one end by the other ports, which stand on the corners of a regular polygon of side `spacing`.
 * Units of radius and spacing are the same; `spacing` at least two radii.
 * Source: near field of a point source; derived.
 */
export function neighbourEnd(count: number, radius: number, spacing: number, end: PortEnd): number {
  let sumOverSpacing = 0
  for (let k = 1; k < count; k++)
    sumOverSpacing += Math.sin(Math.PI / count) / Math.sin((k * Math.PI) / count)
  return (NEIGHBOUR[end] * radius * radius * sumOverSpacing) / spacing
}

/** How the two ends are mounted; a port usually starts flush in a panel and ends free in the box. */
export const endsOf = (ends: PortEnds | undefined): { outer: PortEnd; inner: PortEnd } => ({
  outer: ends?.outer ?? 'flanged',
  inner: ends?.inner ?? 'free',
})
