import type { CutListRequest } from '../../schema/cut-list.ts'
import type { PlacedHole } from '../../schema/fittings.ts'
import type { Hole } from '../../schema/panel.ts'
import { mm } from '../say.ts'
import type { Point } from './bolt-circle.ts'
import type { BoxPlan } from './box-plan.ts'
import { type Drilling, drillingOf, driverHoles, ROUND, sawFor, sawNote, wantedFor } from './driver-holes.ts'
import { type FrontItems, type FrontPort, frontDrivers, frontPorts, smallHoles } from './front-bodies.ts'
import { type FrontLayout, frontLayout } from './front-layout.ts'
import type { WantedHole } from './hole-saw.ts'
import { bushPocket } from './inside-fit.ts'
import { fittingItem, type PlacedItem } from './panel-item.ts'

/** Play of a body in its pocket, mm. Common practice, no source. */
const POCKET_PLAY_MM = 1

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
  const recess = { diameterMm: drilling.bodyMm + POCKET_PLAY_MM, depthMm: pocketMm }
  const pocketed = kind === 'control' && pocketMm > 0
  const pocket = `Pocket ${mm(recess.depthMm)} deep and ${mm(recess.diameterMm)} wide from inside for the bush.`
  const note = kind === 'indicator' ? 'Seal around the lamp.' : pocketed ? pocket : ''
  return {
    id: kind,
    kind,
    ...centre,
    ...ROUND,
    diameterMm,
    drillMm: diameterMm,
    toolNote:
      `Only in the box that holds the amplifier; scrap behind it keeps the far face whole. ${note}`.trim(),
    through: true,
    depthMm: drilling.thicknessMm,
    ...(pocketed && { recess }),
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
  /** Fittings on the front; those say where. */
  fittings: PlacedItem[]
  holes: Hole[]
}

/** The front of a box with everything that goes on it. */
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
  const fittings = plan.fittings.flatMap((fitting, index): PlacedItem[] => {
    const item = fittingItem(fitting, index, drilling.thicknessMm)
    return fitting.panel === 'front' && item.given !== null ? [{ ...item, centre: item.given }] : []
  })
  const holes = [
    ...items.drivers.flatMap((driver) =>
      at(driver.id, driver, (item, centre) => driverHoles('driver', item, centre, drilling)),
    ),
    ...items.ports.flatMap((port) => at(port.id, port, (item, centre) => [portHole(item, centre, drilling)])),
    ...items.small.flatMap((small) =>
      at(small.kind, small, ({ kind, diameterMm }, centre) => [
        smallHole(kind, diameterMm, centre, drilling),
      ]),
    ),
    ...fittings.flatMap(({ make, centre }) => make(centre)),
  ]
  return { items, layout, fittings, holes }
}
