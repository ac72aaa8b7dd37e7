import type { CutListRequest } from '../../schema/cut-list.ts'
import type { Fitting } from '../../schema/fittings.ts'
import type { Hole } from '../../schema/panel.ts'
import { mm } from '../say.ts'
import { boltPositions, type Point, usualFirstAngleDeg } from './bolt-circle.ts'
import type { BoxPlan } from './box-plan.ts'
import { column } from './front-column.ts'
import { cableHole, drillingOf, USUAL_BOLT_COUNT } from './holes.ts'
import { pilotDepthMm } from './screws.ts'

/** Corner holes of a circuit board when the request does not say, mm. Common practice, no source. */
export const USUAL_SCREW_HOLE_MM = 3
export const USUAL_SCREW_INSET_MM = 4

/** Something on the back or the front that is no driver and no port, as large as the room it wants there. */
interface Item {
  id: string
  widthMm: number
  heightMm: number
  given: Point | null
  make: (centre: Point) => Hole[]
}

/** The back of a box: its holes, and by how much they do not fit. */
export interface Back {
  holes: Hole[]
  /** Room wanted along the back beyond what there is, mm; 0 when all fits. */
  shortMm: number
}

const ROUND = { slotWidthMm: null, slotHeightMm: null }

function fittingHoles(fitting: Fitting, thicknessMm: number, centre: Point): Hole[] {
  const base = { ...centre, through: true, depthMm: thicknessMm }
  const { id, holeDiameterMm, cutout, board } = fitting
  if (cutout !== undefined)
    return [
      {
        ...base,
        id,
        kind: 'fitting',
        diameterMm: null,
        slotWidthMm: cutout.widthMm,
        slotHeightMm: cutout.heightMm,
        drillMm: null,
        toolNote: `Drill the corners, saw out ${mm(cutout.widthMm)} by ${mm(cutout.heightMm)}; seal the edge.`,
      },
    ]
  if (holeDiameterMm !== undefined)
    return [
      {
        ...base,
        id,
        kind: 'fitting',
        ...ROUND,
        diameterMm: holeDiameterMm,
        drillMm: holeDiameterMm,
        toolNote: 'Drill from both faces; seal around the collar.',
      },
    ]
  if (board === undefined) return []
  const { screwDiameterMm = USUAL_SCREW_HOLE_MM, screwInsetMm = USUAL_SCREW_INSET_MM } = board
  const [dx, dy] = [board.widthMm / 2 - screwInsetMm, board.heightMm / 2 - screwInsetMm]
  return [
    [-dx, -dy],
    [dx, -dy],
    [-dx, dy],
    [dx, dy],
  ].map(([x = 0, y = 0], index) => ({
    ...base,
    id: `${id} screw ${index + 1}`,
    kind: 'mounting',
    xMm: centre.xMm + x,
    yMm: centre.yMm + y,
    ...ROUND,
    diameterMm: screwDiameterMm,
    drillMm: screwDiameterMm,
    toolNote: 'For a machine screw with a spacer; mark from the board itself and seal the head.',
  }))
}

function fittingItem(fitting: Fitting, thicknessMm: number): Item {
  const { id, holeDiameterMm = 0, cutout, board, xMm, yMm } = fitting
  return {
    id,
    widthMm: board?.widthMm ?? cutout?.widthMm ?? holeDiameterMm,
    heightMm: board?.heightMm ?? cutout?.heightMm ?? holeDiameterMm,
    given: xMm === undefined || yMm === undefined ? null : { xMm, yMm },
    make: (centre) => fittingHoles(fitting, thicknessMm, centre),
  }
}

function radiatorItems(request: CutListRequest, plan: BoxPlan): Item[] {
  const { count = 1, frame } = request.passiveRadiator ?? {}
  if (frame === undefined) return []
  const { thicknessMm, pilotMm, screwMm } = drillingOf(request, plan)
  return Array.from({ length: count }, (_, index) => {
    const id = count > 1 ? `radiator ${index + 1}` : 'radiator'
    return {
      id,
      widthMm: frame.outerDiameterMm,
      heightMm: frame.outerDiameterMm,
      given: null,
      make: (centre): Hole[] => {
        const cutout: Hole = {
          id,
          kind: 'radiator',
          ...centre,
          ...ROUND,
          diameterMm: frame.cutoutDiameterMm,
          drillMm: null,
          toolNote: `Fretsaw, router or hole saw to ${mm(frame.cutoutDiameterMm)}; the rim must lie flat and seal.`,
          through: true,
          depthMm: thicknessMm,
        }
        const bolts = frame.boltCount ?? USUAL_BOLT_COUNT
        const depthMm = pilotDepthMm(thicknessMm, screwMm, frame.flangeThicknessMm ?? 0)
        const around =
          frame.boltCircleDiameterMm === undefined
            ? []
            : boltPositions(frame.boltCircleDiameterMm, bolts, usualFirstAngleDeg(bolts))
        return [
          cutout,
          ...around.map(
            ({ xMm, yMm }, bolt): Hole => ({
              ...cutout,
              id: `${id} screw ${bolt + 1}`,
              kind: 'bolt',
              xMm: centre.xMm + xMm,
              yMm: centre.yMm + yMm,
              diameterMm: pilotMm,
              drillMm: pilotMm,
              toolNote: `Blind: tape on the bit at ${mm(depthMm)}. Mark from the radiator itself.`,
              through: false,
              depthMm,
            }),
          ),
        ]
      },
    }
  })
}

/**
 * The back of a box: the hole for the lead low in the middle, and above it a column of radiators and fittings along
 * the longer side of the opening, in the order of the request, unless a fitting says where it goes.
 * @param webMm  least wood between holes, mm
 */
export function backOf(
  request: CutListRequest,
  plan: BoxPlan,
  panel: { lengthMm: number; widthMm: number },
  webMm: number,
): Back {
  const { thicknessMm } = plan.carcass
  const cable = cableHole(panel.lengthMm, panel.widthMm, plan)
  const fittings = plan.fittings.filter(({ panel: on }) => on !== 'front')
  const items = [
    ...radiatorItems(request, plan),
    ...fittings.map((fitting) => fittingItem(fitting, thicknessMm)),
  ]
  const free = items.filter(({ given }) => given === null)
  const { widthMm } = plan.inner
  const insetMm = (panel.lengthMm - widthMm) / 2
  const floorMm = cable.yMm + (cable.diameterMm ?? 0) / 2
  const roomMm = panel.widthMm - insetMm - floorMm
  const bodies = free.map((item) => ({
    alongMm: item.heightMm,
    acrossMm: item.widthMm,
    rimMm: 0,
    shelfMm: 0,
    clearMm: 0,
  }))
  const placed = column(bodies, roomMm, webMm, { firstMm: webMm, lastMm: webMm })
  const acrossMm = Math.max(0, ...free.map((item) => item.widthMm - widthMm))
  const shortMm = free.length === 0 ? 0 : Math.max(placed.shortMm, acrossMm)
  const holes = items.flatMap((item) => {
    const along = placed.centresMm[free.indexOf(item)]
    const centre =
      item.given ?? (along === undefined ? null : { xMm: panel.lengthMm / 2, yMm: floorMm + along })
    return centre === null ? [] : item.make(centre)
  })
  return { holes: [cable, ...holes], shortMm }
}

/** Holes of the fittings that are to go on the front; those say where. */
export const frontFittings = ({ fittings, carcass }: BoxPlan): Hole[] =>
  fittings
    .filter(({ panel }) => panel === 'front')
    .flatMap((fitting) => {
      const { given, make } = fittingItem(fitting, carcass.thicknessMm)
      return given === null ? [] : make(given)
    })
