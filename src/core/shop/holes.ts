import type { CutListRequest } from '../../schema/cut-list.ts'
import type { DriverFrame } from '../../schema/driver.ts'
import type { PlacedHole } from '../../schema/fittings.ts'
import type { Hole } from '../../schema/panel.ts'
import { mm } from '../say.ts'
import { boltPositions, type Point, usualFirstAngleDeg } from './bolt-circle.ts'
import type { BoxPlan } from './box-plan.ts'
import {
  type FrontDriver,
  type FrontItems,
  type FrontPort,
  frontDrivers,
  frontPorts,
  smallHoles,
} from './front-bodies.ts'
import { type FrontLayout, frontLayout } from './front-layout.ts'
import { chooseSaw, type SawChoice, type WantedHole } from './hole-saw.ts'
import { bushPocket } from './inside-fit.ts'
import { coreMm, leadBitMm, pilotDepthMm } from './screws.ts'

/** Screw for drivers when the request names none, mm. Common practice, no source. */
export const USUAL_DRIVER_SCREW_MM = 3
/** Bush of a control when the request does not say, mm. Common practice, no source. */
export const USUAL_BUSH_MM = 7
/** Screws of a driver that names a bolt circle but no number. Common practice, no source. */
export const USUAL_BOLT_COUNT = 4

const ROUND = { slotWidthMm: null, slotHeightMm: null }

/** Everything a hole depends on besides the thing that goes through it. */
interface Drilling {
  thicknessMm: number
  pilotMm: number
  /** Length of the driver screws on hand, mm; Infinity when none are named. */
  screwMm: number
  /** Saws on hand; null when the request names none. */
  sawsMm: readonly number[] | null
  bushMm: number
}

export function drillingOf(request: CutListRequest, plan: BoxPlan): Drilling {
  const { thicknessMm } = plan.carcass
  const screw = request.workshop?.screws?.driver
  return {
    thicknessMm,
    pilotMm: leadBitMm(coreMm(screw?.diameterMm ?? USUAL_DRIVER_SCREW_MM), plan.material),
    screwMm: screw?.lengthMm ?? Infinity,
    sawsMm: request.workshop?.holeSawsMm ?? null,
    bushMm: request.signal?.volumeControl?.bushLengthMm ?? USUAL_BUSH_MM,
  }
}

/** A driver's cut-out as the choice of a saw sees it. */
export const wantedFor = (frame: DriverFrame, pilotMm: number): WantedHole => ({
  diameterMm: frame.cutoutDiameterMm,
  boltCircleMm: frame.boltCircleDiameterMm,
  pilotMm,
  flangeMm: frame.outerDiameterMm,
})

/** The choice among the saws on hand; when none are named, a saw of just the size. */
export const sawFor = (wanted: WantedHole, sawsMm: readonly number[] | null): SawChoice =>
  chooseSaw(wanted, sawsMm ?? [wanted.diameterMm])

function sawNote({ sawMm, fileMm, looseMm }: SawChoice, wantedMm: number): string {
  if (sawMm === null)
    return `No hole saw on hand serves: fretsaw, or router on a template, to ${mm(wantedMm)}.`
  const loose = looseMm > 0 ? ` It is ${mm(looseMm)} wide: centre with care and seal the gap.` : ''
  const filed = fileMm > 0 ? ` Then file ${mm(fileMm)} all round to ${mm(wantedMm)}.` : ''
  return `Hole saw ${mm(sawMm)}: pilot right through, then from each face to the middle.${filed}${loose}`
}

function driverHoles(driver: FrontDriver, centre: Point, drilling: Drilling): Hole[] {
  const { frame } = driver
  const choice = sawFor(wantedFor(frame, drilling.pilotMm), drilling.sawsMm)
  const bolts = frame.boltCount ?? USUAL_BOLT_COUNT
  const cutout: Hole = {
    id: driver.id,
    kind: 'driver',
    ...centre,
    ...ROUND,
    diameterMm: driver.holeMm,
    drillMm: choice.sawMm,
    toolNote: sawNote(choice, frame.cutoutDiameterMm),
    through: true,
    depthMm: drilling.thicknessMm,
  }
  if (frame.boltCircleDiameterMm === undefined) return [cutout]
  const depthMm = pilotDepthMm(drilling.thicknessMm, drilling.screwMm, frame.flangeThicknessMm ?? 0)
  const positions = boltPositions(frame.boltCircleDiameterMm, bolts, usualFirstAngleDeg(bolts))
  return [
    cutout,
    ...positions.map(
      ({ xMm, yMm }, index): Hole => ({
        id: `${driver.id} screw ${index + 1}`,
        kind: 'bolt',
        xMm: centre.xMm + xMm,
        yMm: centre.yMm + yMm,
        ...ROUND,
        diameterMm: drilling.pilotMm,
        drillMm: drilling.pilotMm,
        toolNote: `Blind: tape on the bit at ${mm(depthMm)}. Mark from the driver itself.`,
        through: false,
        depthMm,
      }),
    ),
  ]
}

function portHole(port: FrontPort, centre: Point, drilling: Drilling): Hole {
  const base = { id: port.id, ...centre, through: true, depthMm: drilling.thicknessMm }
  if (port.slot !== null) {
    const { widthMm, heightMm, onWall } = port.slot
    const floor = onWall ? ' Its lower edge is level with the inner floor.' : ''
    const toolNote = `Drill the corners, saw out ${mm(widthMm)} by ${mm(heightMm)} with a fretsaw or router.${floor}`
    return {
      ...base,
      kind: 'slot',
      diameterMm: null,
      slotWidthMm: widthMm,
      slotHeightMm: heightMm,
      drillMm: null,
      toolNote,
    }
  }
  const wantedMm = port.outerDiameterMm ?? 0
  const choice = sawFor({ diameterMm: wantedMm }, drilling.sawsMm)
  return {
    ...base,
    kind: 'port',
    ...ROUND,
    diameterMm: port.holeMm,
    drillMm: choice.sawMm,
    toolNote: `${sawNote(choice, wantedMm)} Seal the tube all round.`,
  }
}

function smallHole(
  kind: 'control' | 'indicator',
  diameterMm: number,
  centre: Point,
  drilling: Drilling,
): Hole {
  const { pocketMm } = bushPocket(drilling.thicknessMm, drilling.bushMm)
  const pocket = pocketMm > 0 ? ` Pocket ${mm(pocketMm)} deep from inside for the bush.` : ''
  return {
    id: kind,
    kind,
    ...centre,
    ...ROUND,
    diameterMm,
    drillMm: diameterMm,
    toolNote: `Only in the box that holds the amplifier.${kind === 'control' ? pocket : ' Seal around the lamp.'}`,
    through: true,
    depthMm: drilling.thicknessMm,
  }
}

/** Names of everything on the front that has a place. */
export const frontNames = ({ drivers, ports, small }: FrontItems): string[] => [
  ...[...drivers, ...ports].map(({ id }) => id),
  ...small.map(({ kind }) => kind),
]

/** The layout with the holes that the request places itself; when it places all, nothing can be too long. */
function withPlacedHoles(layout: FrontLayout, items: FrontItems, placed: readonly PlacedHole[]): FrontLayout {
  if (placed.length === 0) return layout
  const centres = new Map(layout.centres)
  for (const { for: id, xMm, yMm } of placed) centres.set(id, { xMm, yMm })
  const hasAll = frontNames(items).every((id) => placed.some((hole) => hole.for === id))
  return hasAll
    ? { ...layout, centres, shortMm: 0, overlapMm: 0, acrossMm: 0, acrossShortMm: 0 }
    : { ...layout, centres }
}

/** What goes on the front of a box, its layout, and the holes that make it. */
export interface Front {
  items: FrontItems
  layout: FrontLayout
  holes: Hole[]
}

export function frontOf(request: CutListRequest, plan: BoxPlan, webMm: number): Front {
  const drilling = drillingOf(request, plan)
  const sawn = (wanted: WantedHole) => wanted.diameterMm + sawFor(wanted, drilling.sawsMm).looseMm
  const items: FrontItems = {
    drivers: frontDrivers(plan.drivers, (frame) => sawn(wantedFor(frame, drilling.pilotMm))),
    ports: frontPorts(plan.port, (diameterMm) => sawn({ diameterMm })),
    small: smallHoles(request),
    floor: plan.port?.slot?.onWall === true,
  }
  const layout = withPlacedHoles(frontLayout(plan, items, webMm), items, request.box?.holes ?? [])
  const at = <Item>(id: string, item: Item, make: (item: Item, centre: Point) => Hole[]): Hole[] => {
    const centre = layout.centres.get(id)
    return centre === undefined ? [] : make(item, centre)
  }
  const holes = [
    ...items.drivers.flatMap((driver) =>
      at(driver.id, driver, (item, centre) => driverHoles(item, centre, drilling)),
    ),
    ...items.ports.flatMap((port) => at(port.id, port, (item, centre) => [portHole(item, centre, drilling)])),
    ...items.small.flatMap((small) =>
      at(small.kind, small, ({ kind, diameterMm }, centre) => [
        smallHole(kind, diameterMm, centre, drilling),
      ]),
    ),
  ]
  return { items, layout, holes }
}

/** The hole for the lead, low in the middle of the back. */
export function cableHole(
  backLengthMm: number,
  backWidthMm: number,
  { carcass: { thicknessMm }, leadHoleMm }: BoxPlan,
): Hole {
  return {
    id: 'cable',
    kind: 'cable',
    xMm: backLengthMm / 2,
    yMm: Math.min(backWidthMm / 2, 2 * thicknessMm + leadHoleMm),
    ...ROUND,
    diameterMm: leadHoleMm,
    drillMm: leadHoleMm,
    toolNote: 'For the lead; knot it inside and seal the hole.',
    through: true,
    depthMm: thicknessMm,
  }
}
