import type { CutListRequest } from '../../schema/cut-list.ts'
import type { Hole, Panel } from '../../schema/panel.ts'
import type { BoxPlan } from './box-plan.ts'
import { drillingOf, sawFor, wantedFor } from './driver-holes.ts'
import type { FrontDriver, FrontPort } from './front-bodies.ts'
import { coverMm, landMm } from './hole-saw.ts'
import { least } from './least.ts'
import { isFibreboard, longestScrewMm } from './screws.ts'
import type { ShopFacts } from './shop-facts.ts'

/** What is sawn for drivers, radiators and ports, and what stays beside it. */
export function sawFacts(
  request: CutListRequest,
  plan: BoxPlan,
  bolted: readonly FrontDriver[],
  tubes: readonly FrontPort[],
): Pick<ShopFacts, 'land' | 'cover' | 'filed' | 'noSaw'> {
  const { pilotMm, sawsMm } = drillingOf(request, plan)
  const drivers = bolted.map((driver) => {
    const wanted = wantedFor(driver.frame, pilotMm)
    const choice = sawFor(wanted, sawsMm)
    return {
      id: driver.id,
      sawMm: choice.sawMm,
      holeMm: driver.holeMm,
      landMm: landMm(wanted, driver.holeMm),
      coverMm: coverMm(wanted, driver.holeMm),
      fileMm: choice.fileMm,
    }
  })
  const ports = tubes.filter(
    ({ outerDiameterMm }) =>
      outerDiameterMm !== null && sawFor({ diameterMm: outerDiameterMm }, sawsMm).sawMm === null,
  )
  return {
    land: least(drivers, (driver) => driver.landMm),
    cover: least(drivers, (driver) => driver.coverMm),
    filed: least(
      drivers.filter(({ fileMm }) => fileMm > 0),
      ({ fileMm }) => -fileMm,
    ),
    noSaw: [...drivers.filter(({ sawMm }) => sawMm === null), ...ports].map(({ id }) => id),
  }
}

/** The screw through the thinnest flange. */
export function driverScrewFact(
  request: CutListRequest,
  plan: BoxPlan,
  bolted: readonly FrontDriver[],
): ShopFacts['driverScrew'] {
  const screw = request.workshop?.screws?.driver
  const thinnest = least(bolted, ({ frame }) => frame.flangeThicknessMm ?? 0)
  if (screw === undefined || thinnest === null) return null
  const flangeMm = thinnest.frame.flangeThicknessMm ?? 0
  return { lengthMm: screw.lengthMm, flangeMm, longestMm: longestScrewMm(plan.carcass.thicknessMm, flangeMm) }
}

/** The screw of a driver or a radiator that sits nearest an edge, and nearest a corner. */
export function faceScrewFact(
  holes: readonly Hole[],
  panel: Pick<Panel, 'lengthMm' | 'widthMm'>,
  plan: BoxPlan,
): ShopFacts['faceScrew'] {
  const screws = holes.filter((hole) => hole.kind === 'bolt')
  if (screws.length === 0 || !isFibreboard(plan.material)) return null
  const toEdges = screws.map(({ xMm, yMm }) => ({
    x: Math.min(xMm, panel.lengthMm - xMm),
    y: Math.min(yMm, panel.widthMm - yMm),
  }))
  return {
    edgeMm: Math.min(...toEdges.map(({ x, y }) => Math.min(x, y))),
    // The guidance asks for the distance along the edge: the longer of both ways to the corner.
    cornerMm: Math.min(...toEdges.map(({ x, y }) => Math.max(x, y))),
  }
}
