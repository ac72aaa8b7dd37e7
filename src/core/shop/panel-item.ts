import type { Fitting } from '../../schema/fittings.ts'
import type { Hole } from '../../schema/panel.ts'
import { mm } from '../say.ts'
import type { Point } from './bolt-circle.ts'
import { ROUND } from './driver-holes.ts'

/** Corner holes of a circuit board when the request does not say, mm. Common practice, no source. */
export const USUAL_SCREW_HOLE_MM = 3
export const USUAL_SCREW_INSET_MM = 4

/** The room something wants beside others: a diameter, or else a width and a height, mm. */
export type Footprint = Pick<Hole, 'diameterMm' | 'slotWidthMm' | 'slotHeightMm'>

/** Something on the back or the front that is no driver and no port. */
export interface PanelItem {
  id: string
  /** Where the request describes it. */
  at: string
  footprint: Footprint
  /** What of it reaches into the box, and how far from the inside of the panel, mm. */
  body: Footprint
  depthMm: number
  /** Where the request puts it; null when that is for the layout to find. */
  given: Point | null
  make: (centre: Point) => Hole[]
}

/** The same in its place. */
export interface PlacedItem extends PanelItem {
  centre: Point
}

const rectangle = (widthMm: number, heightMm: number): Footprint => ({
  diameterMm: null,
  slotWidthMm: widthMm,
  slotHeightMm: heightMm,
})
export const roundOf = (diameterMm: number): Footprint => ({ ...ROUND, diameterMm })

/** Holes for the screws at the corners of a circuit board. Geometry. */
function boardHoles(
  id: string,
  board: NonNullable<Fitting['board']>,
  depthMm: number,
  centre: Point,
): Hole[] {
  const { screwDiameterMm = USUAL_SCREW_HOLE_MM, screwInsetMm = USUAL_SCREW_INSET_MM } = board
  const [dx, dy] = [board.widthMm / 2 - screwInsetMm, board.heightMm / 2 - screwInsetMm]
  const corners = [
    [-dx, -dy],
    [dx, -dy],
    [-dx, dy],
    [dx, dy],
  ]
  return corners.map(([x = 0, y = 0], index) => ({
    id: `${id} screw ${index + 1}`,
    kind: 'mounting',
    xMm: centre.xMm + x,
    yMm: centre.yMm + y,
    ...ROUND,
    diameterMm: screwDiameterMm,
    drillMm: screwDiameterMm,
    toolNote: 'For a machine screw with a spacer; mark from the board itself and seal the head.',
    through: true,
    depthMm,
  }))
}

function fittingHoles(fitting: Fitting, thicknessMm: number, centre: Point): Hole[] {
  const { id, holeDiameterMm, cutout, board } = fitting
  if (board !== undefined) return boardHoles(id, board, thicknessMm, centre)
  const base = { id, kind: 'fitting' as const, ...centre, through: true, depthMm: thicknessMm }
  if (cutout !== undefined)
    return [
      {
        ...base,
        ...rectangle(cutout.widthMm, cutout.heightMm),
        drillMm: null,
        toolNote: `Drill the corners, saw out ${mm(cutout.widthMm)} by ${mm(cutout.heightMm)}; seal the edge.`,
      },
    ]
  if (holeDiameterMm === undefined) return []
  return [
    {
      ...base,
      ...roundOf(holeDiameterMm),
      drillMm: holeDiameterMm,
      toolNote: 'Drill from both faces; seal around the collar.',
    },
  ]
}

/** A fitting as what it wants of its panel. */
export function fittingItem(fitting: Fitting, index: number, thicknessMm: number): PanelItem {
  const { id, holeDiameterMm = 0, cutout, board, xMm, yMm, depthMm = 0 } = fitting
  const sides = board ?? cutout
  const footprint = sides === undefined ? roundOf(holeDiameterMm) : rectangle(sides.widthMm, sides.heightMm)
  return {
    id,
    at: `/box/fittings/${index}`,
    footprint,
    body: footprint,
    depthMm,
    given: xMm === undefined || yMm === undefined ? null : { xMm, yMm },
    make: (centre) => fittingHoles(fitting, thicknessMm, centre),
  }
}
