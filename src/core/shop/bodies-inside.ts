import type { Panel } from '../../schema/panel.ts'
import type { Back } from './back.ts'
import type { BoxPlan } from './box-plan.ts'
import { ductOf } from './duct.ts'
import type { FrontDriver } from './front-bodies.ts'
import type { Opening } from './hole-gaps.ts'
import type { Front } from './holes.ts'
import { tubeInsideMm } from './inside-fit.ts'
import { type Footprint, type PlacedItem, roundOf } from './panel-item.ts'

/** Something that stands into the box, seen from the front, from the left inner wall and the inner floor, mm. */
export interface Body extends Opening {
  /** Where the request describes it. */
  at: string
  /** From where to where it reaches behind the front, mm. */
  fromMm: number
  toMm: number
}

/** How far the opening between the walls begins inside the edge of front and back, mm: 0 where they are inset. */
export const insetMm = (panel: Pick<Panel, 'lengthMm'>, plan: BoxPlan): number =>
  (panel.lengthMm - plan.inner.widthMm) / 2

/** Where a request gives the body of a control. */
export const CONTROL_BODY = '/signal/volumeControl/bodyDiameterMm'

/** The magnet of a driver, or its cut-out where no magnet is measured, mm. */
export const magnetMm = ({ frame }: FrontDriver): number => frame.magnetDiameterMm ?? frame.cutoutDiameterMm

/** An item in its place, yet without the room it takes in depth. */
const itemPlace = ({ id, at, centre, body }: PlacedItem, xMm: number, inset: number) => ({
  id,
  at,
  xMm: xMm - inset,
  yMm: centre.yMm - inset,
  ...body,
})

/** A slot with the boards of its duct. */
function ductFootprint(plan: BoxPlan): Footprint | null {
  const duct = ductOf(plan)
  if (duct === null) return null
  const { thicknessMm } = plan.carcass
  return {
    diameterMm: null,
    slotWidthMm: duct.widthMm + duct.cheeksEach * thicknessMm,
    slotHeightMm: duct.heightMm + 2 * thicknessMm,
  }
}

/**
 * What stands into the box behind its front. Geometry.
 * @param driverMm  diameter that counts of a driver: its magnet or its basket, mm
 */
export function frontBodies(
  front: Front,
  panel: Pick<Panel, 'lengthMm'>,
  plan: BoxPlan,
  driverMm: (driver: FrontDriver) => number,
): Body[] {
  const inset = insetMm(panel, plan)
  const { thicknessMm } = plan.carcass
  const duct = ductFootprint(plan)
  const tubeMm = tubeInsideMm(plan.portReachMm ?? 0, thicknessMm)
  const drilled = front.holes.flatMap((hole): Body[] => {
    const driver = front.items.drivers.find(({ id }) => id === hole.id)
    const port = front.items.ports.find(({ id }) => id === hole.id)
    const place = { id: hole.id, xMm: hole.xMm - inset, yMm: hole.yMm - inset, fromMm: 0 }
    if (driver !== undefined) {
      const toMm = Math.max(0, driver.frame.depthMm - thicknessMm)
      return [{ ...place, at: driver.at, ...roundOf(driverMm(driver)), toMm }]
    }
    const bodyMm = front.items.small.find(({ kind }) => kind === hole.id)?.bodyMm ?? null
    // How deep a control is nobody says; beside it there is no room either way.
    if (bodyMm !== null) return [{ ...place, at: CONTROL_BODY, ...roundOf(bodyMm), toMm: 0 }]
    if (port === undefined) return []
    const footprint = port.outerDiameterMm === null ? duct : roundOf(port.outerDiameterMm)
    return footprint === null ? [] : [{ ...place, at: '/port', ...footprint, toMm: tubeMm }]
  })
  const fitted = front.fittings.map(
    (item): Body => ({ ...itemPlace(item, item.centre.xMm, inset), fromMm: 0, toMm: item.depthMm }),
  )
  return [...drilled, ...fitted]
}

/** What stands into the box from its back. Geometry. */
export function backBodies(back: Back, panel: Panel, plan: BoxPlan): Body[] {
  const inset = insetMm(panel, plan)
  const { depthMm: roomMm } = plan.inner
  return back.items.map(
    (item): Body => ({
      ...itemPlace(item, panel.lengthMm - item.centre.xMm, inset),
      fromMm: roomMm - item.depthMm,
      toMm: roomMm,
    }),
  )
}
