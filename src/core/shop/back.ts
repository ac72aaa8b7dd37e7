import type { CutListRequest } from '../../schema/cut-list.ts'
import type { Hole } from '../../schema/panel.ts'
import type { PassiveRadiator } from '../../schema/port.ts'
import { type Lacking, nearestPlace, type PanelRoom, placesBeside } from './back-places.ts'
import type { Point } from './bolt-circle.ts'
import type { BoxPlan } from './box-plan.ts'
import { type Drilling, drillingOf, driverHoles, ROUND, sawFor, wantedFor } from './driver-holes.ts'
import type { FrontDriver } from './front-bodies.ts'
import { gapMm, type Opening } from './hole-gaps.ts'
import { fittingItem, type PanelItem, type PlacedItem, roundOf } from './panel-item.ts'

/** The back of a box: its holes, and what does not fit. */
export interface Back {
  holes: Hole[]
  /** Radiators and fittings that found a place; x counts from the left as seen from behind. */
  items: PlacedItem[]
  radiators: FrontDriver[]
  /** Those that found none, with where the request describes them. */
  homeless: Homeless[]
}

/** Something without a place on the back, and the room it lacks. */
export interface Homeless extends Lacking {
  id: string
  at: string
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

/**
 * The back of a box: the hole for the lead low in the middle, and above it a column of radiators and fittings, in
 * the order of the request, unless the request says where something goes. What looks for a place keeps clear of what
 * has one.
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
  const sawn = (frame: FrontDriver['frame']) =>
    frame.cutoutDiameterMm + sawFor(wantedFor(frame, drilling.pilotMm), drilling.sawsMm).looseMm
  const radiators = radiatorsOf(request.passiveRadiator, sawn)
  const items = [
    ...radiators.map((radiator) => radiatorItem(radiator, drilling)),
    ...plan.fittings.flatMap((fitting, index) =>
      fitting.panel === 'front' ? [] : [fittingItem(fitting, index, drilling.thicknessMm)],
    ),
  ].map((item) => ({ ...item, given: item.given ?? told.get(item.id) ?? null }))
  const given = items.flatMap(({ id, footprint, given: centre }) =>
    centre === null ? [] : [{ id, ...footprint, ...centre }],
  )
  const insetMm = (panel.lengthMm - plan.inner.widthMm) / 2
  const room = { ...panel, insetMm, floorMm: insetMm, webMm }
  const low = cableHole(panel.lengthMm, panel.widthMm, plan)
  const cable = { ...low, ...(told.get(CABLE) ?? cablePlace(low, given, room)) }
  const isLow = cable.xMm === low.xMm && cable.yMm === low.yMm
  const floorMm = isLow ? cable.yMm + plan.leadHoleMm / 2 : insetMm
  const places = placesBeside(
    items.filter((item) => item.given === null),
    [cable, ...given],
    { ...room, floorMm },
  )
  const inPlace = items.flatMap((item): PlacedItem[] => {
    const centre = item.given ?? places.centres.get(item.id)
    return centre === undefined ? [] : [{ ...item, centre }]
  })
  return {
    holes: [cable, ...inPlace.flatMap(({ make, centre }) => make(centre))],
    items: inPlace,
    radiators,
    homeless: items.flatMap(({ id, at }) => {
      const lacking = places.lacking.get(id)
      return lacking === undefined ? [] : [{ id, at, ...lacking }]
    }),
  }
}

/** Where the hole for the lead goes by itself: low in the middle, or near there where something is in the way. */
const cablePlace = (low: Hole, given: readonly Opening[], room: PanelRoom): Point =>
  given.every((other) => gapMm(low, other) >= room.webMm)
    ? low
    : (nearestPlace({ id: CABLE, footprint: low }, low, given, room) ?? low)

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
