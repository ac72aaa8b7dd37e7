import type { Back } from './back.ts'
import type { BoxPlan } from './box-plan.ts'
import type { Front } from './holes.ts'

/** Wire beyond the way along the walls, to solder outside the box and to strip, mm. Common practice, no source. */
const SPARE_MM = 150

/**
 * Two-core wire inside one box, m: from the first circuit board on its back, else from the hole for the lead, along
 * the walls to each driver, with some to spare. Geometry; the spare is common practice, no source.
 */
export function wireInsideM(plan: BoxPlan, front: Front, back: Back, panelLengthMm: number): number {
  const board = back.items.find(({ id }) =>
    plan.fittings.some((fitting) => fitting.id === id && fitting.board),
  )
  const from = board?.centre ?? back.holes.find(({ kind }) => kind === 'cable')
  if (from === undefined) return 0
  const ways = front.holes
    .filter(({ kind }) => kind === 'driver')
    // The back is seen from behind: its left is the right of the front.
    .map(({ xMm, yMm }) => Math.abs(panelLengthMm - from.xMm - xMm) + Math.abs(from.yMm - yMm))
  return ways.reduce((sum, way) => sum + way + plan.inner.depthMm + SPARE_MM, 0) / 1000
}
