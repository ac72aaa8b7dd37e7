import type { CutListRequest } from '../../schema/cut-list.ts'
import type { Hole } from '../../schema/panel.ts'
import type { PassiveRadiator } from '../../schema/port.ts'
import type { BoxPlan } from './box-plan.ts'
import { type Drilling, drillingOf, driverHoles, ROUND, sawFor, wantedFor } from './driver-holes.ts'
import type { FrontDriver } from './front-bodies.ts'
import { column } from './front-column.ts'
import { fittingItem, type PanelItem, type PlacedItem, roundOf } from './panel-item.ts'

/** The back of a box: its holes, and by how much they do not fit. */
export interface Back {
  holes: Hole[]
  /** Radiators and fittings that found a place; x counts from the left as seen from behind. */
  items: PlacedItem[]
  radiators: FrontDriver[]
  /** Room wanted along the back beyond what there is, mm; 0 when all fits. */
  shortMm: number
}

/** The name of the hole for the lead. */
const CABLE = 'cable'

/** Names of the holes in the back that the maker may place. */
export const backNames = (radiator: PassiveRadiator | undefined): string[] => [
  CABLE,
  ...radiatorsOf(radiator, () => 0).map(({ id }) => id),
]

/** Passive radiators with a frame, one by one. */
function radiatorsOf(
  radiator: PassiveRadiator | undefined,
  sawn: (frame: FrontDriver['frame']) => number,
): FrontDriver[] {
  const { count = 1, frame } = radiator ?? {}
  if (frame === undefined) return []
  return Array.from({ length: count }, (_, index) => ({
    id: count > 1 ? `radiator ${index + 1}` : 'radiator',
    at: '/passiveRadiator',
    frame,
    holeMm: sawn(frame),
  }))
}

const radiatorItem = (radiator: FrontDriver, drilling: Drilling): PanelItem => ({
  id: radiator.id,
  at: radiator.at,
  footprint: roundOf(radiator.frame.outerDiameterMm),
  body: roundOf(radiator.frame.cutoutDiameterMm),
  depthMm: Math.max(0, radiator.frame.depthMm - drilling.thicknessMm),
  given: null,
  make: (centre) => driverHoles('radiator', radiator, centre, drilling),
})

/** Height and width of what an item covers, mm. */
function sizeOf({ footprint: { diameterMm, slotWidthMm, slotHeightMm } }: PanelItem): [number, number] {
  return [diameterMm ?? slotHeightMm ?? 0, diameterMm ?? slotWidthMm ?? 0]
}

/**
 * The back of a box: the hole for the lead low in the middle, and above it a column of radiators and fittings, in
 * the order of the request, unless the request says where something goes.
 * @param webMm  least wood between holes, mm
 */
export function backOf(
  request: CutListRequest,
  plan: BoxPlan,
  panel: { lengthMm: number; widthMm: number },
  webMm: number,
): Back {
  const drilling = drillingOf(request, plan)
  const told = new Map((request.box?.holes ?? []).map(({ for: id, xMm, yMm }) => [id, { xMm, yMm }]))
  const cable = { ...cableHole(panel.lengthMm, panel.widthMm, plan), ...told.get(CABLE) }
  const sawn = (frame: FrontDriver['frame']) =>
    frame.cutoutDiameterMm + sawFor(wantedFor(frame, drilling.pilotMm), drilling.sawsMm).looseMm
  const radiators = radiatorsOf(request.passiveRadiator, sawn)
  const items = [
    ...radiators.map((radiator) => radiatorItem(radiator, drilling)),
    ...plan.fittings.flatMap((fitting, index) =>
      fitting.panel === 'front' ? [] : [fittingItem(fitting, index, drilling.thicknessMm)],
    ),
  ].map((item) => ({ ...item, given: item.given ?? told.get(item.id) ?? null }))
  const free = items.filter(({ given }) => given === null)
  const insetMm = (panel.lengthMm - plan.inner.widthMm) / 2
  const floorMm = told.has(CABLE) ? insetMm : cable.yMm + (cable.diameterMm ?? 0) / 2
  const bodies = free.map((item) => {
    const [alongMm, acrossMm] = sizeOf(item)
    return { alongMm, acrossMm, rimMm: 0, shelfMm: 0, clearMm: 0 }
  })
  const ends = { firstMm: webMm, lastMm: webMm }
  const placed = column(bodies, panel.widthMm - insetMm - floorMm, webMm, ends)
  const acrossMm = Math.max(0, ...bodies.map((body) => body.acrossMm - plan.inner.widthMm))
  const inPlace = items.flatMap((item): PlacedItem[] => {
    const alongMm = placed.centresMm[free.indexOf(item)]
    const found = alongMm === undefined ? null : { xMm: panel.lengthMm / 2, yMm: floorMm + alongMm }
    const centre = item.given ?? found
    return centre === null ? [] : [{ ...item, centre }]
  })
  return {
    holes: [cable, ...inPlace.flatMap(({ make, centre }) => make(centre))],
    items: inPlace,
    radiators,
    shortMm: free.length === 0 ? 0 : Math.max(placed.shortMm, acrossMm),
  }
}

/** The hole for the lead, low in the middle of the back. */
function cableHole(backLengthMm: number, backWidthMm: number, { carcass, leadHoleMm }: BoxPlan): Hole {
  const { thicknessMm } = carcass
  return {
    id: CABLE,
    kind: 'cable',
    xMm: backLengthMm / 2,
    yMm: Math.min(backWidthMm / 2, 2 * thicknessMm + leadHoleMm),
    ...ROUND,
    diameterMm: leadHoleMm,
    drillMm: leadHoleMm,
    toolNote: 'Scrap behind it keeps the far face whole. For the lead; knot it inside and seal the hole.',
    through: true,
    depthMm: thicknessMm,
  }
}
