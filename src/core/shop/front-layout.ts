import type { Point } from './bolt-circle.ts'
import type { BoxPlan } from './box-plan.ts'
import type { FrontDriver, FrontPort, SmallHole } from './front-bodies.ts'
import { type Body, besideMm, column, type Opening } from './front-column.ts'
import { frontCovers } from './joint-panels.ts'

/** Least web when the workshop does not say, mm; the board counts when it is thicker. Common practice, no source. */
const LEAST_WEB_MM = 8

/** Least wood between holes, mm: as asked, else 8 mm or the board, whichever is more. Common practice, no source. */
export const leastWebMm = (askedMm: number | undefined, thicknessMm: number): number =>
  askedMm ?? Math.max(LEAST_WEB_MM, thicknessMm)

export interface FrontItems {
  drivers: readonly FrontDriver[]
  ports: readonly FrontPort[]
  small: readonly SmallHole[]
}

/** Where everything on the front lies, or by how much it does not fit. */
export interface FrontLayout {
  /** Centres on the panel, from its lower left corner; empty when the holes do not fit. */
  centres: Map<string, Point>
  /** Room wanted along the column beyond what there is, mm. */
  shortMm: number
  /** Room by which the holes alone are too long for the opening, mm. */
  overlapMm: number
  /** Room by which the widest hole exceeds the opening, mm. */
  acrossMm: number
}

/** Name of the row that small holes get when there is no room beside a port. */
const SMALL_ROW = 'small holes'

function bodiesOf({ drivers, ports }: FrontItems, upright: boolean): Body[] {
  const driverBodies = drivers.map(({ id, frame }) => ({
    id,
    alongMm: frame.cutoutDiameterMm,
    acrossMm: frame.cutoutDiameterMm,
    rimMm: Math.max(0, (frame.outerDiameterMm - frame.cutoutDiameterMm) / 2),
  }))
  const portBodies = ports.map(({ id, outerDiameterMm, slot }) => {
    const width = slot?.widthMm ?? outerDiameterMm ?? 0
    const height = slot?.heightMm ?? outerDiameterMm ?? 0
    return { id, alongMm: upright ? height : width, acrossMm: upright ? width : height, rimMm: 0 }
  })
  return [...driverBodies, ...portBodies]
}

function smallRow(small: readonly SmallHole[], webMm: number): Body {
  const diameters = small.map((hole) => hole.diameterMm)
  return {
    id: SMALL_ROW,
    alongMm: Math.max(...diameters),
    acrossMm: diameters.reduce((sum, diameter) => sum + diameter, 0) + webMm * (small.length - 1),
    rimMm: 0,
  }
}

/** Offsets of the small holes from the middle line: beside the last port, or in a row of their own. */
function smallOffsets(
  small: readonly SmallHole[],
  beside: Body | undefined,
  opening: Opening,
  webMm: number,
) {
  const sides = [1, -1]
  const inRow = small.length === 1 ? [0] : sides.map((side) => (side * opening.acrossMm) / 4)
  return small.map(({ kind, diameterMm }, index) => {
    const offset = beside === undefined ? null : besideMm(beside, diameterMm, opening, webMm)
    return { kind, besideMm: offset === null ? null : sides[index]! * offset, inRowMm: inRow[index] ?? 0 }
  })
}

/** The column on one front: bodies in order, small holes, and how it stands in the opening. */
interface Frame {
  bodies: readonly Body[]
  small: { kind: SmallHole['kind']; offsetMm: number }[]
  opening: Opening
  upright: boolean
}

function frameOf(plan: BoxPlan, items: FrontItems, webMm: number): Frame {
  const { widthMm, heightMm } = plan.inner
  const upright = heightMm >= widthMm
  const opening: Opening = {
    alongMm: upright ? heightMm : widthMm,
    acrossMm: upright ? widthMm : heightMm,
    marginMm: frontCovers(plan.carcass) ? plan.carcass.thicknessMm : 0,
  }
  const main = bodiesOf(items, upright)
  const port = items.ports.length > 0 ? main.at(-1) : undefined
  const offsets = smallOffsets(items.small, port, opening, webMm)
  const beside = offsets.every((offset) => offset.besideMm !== null)
  return {
    bodies: beside ? main : [...main, smallRow(items.small, webMm)],
    small: offsets.map(({ kind, besideMm: offset, inRowMm }) => ({
      kind,
      offsetMm: beside ? (offset ?? 0) : inRowMm,
    })),
    opening,
    upright,
  }
}

/** Centres on the panel, from its lower left corner; an upright column is counted from the top. */
function centresOf(frame: Frame, plan: BoxPlan, alongMm: readonly number[]): Map<string, Point> {
  const { marginMm } = frame.opening
  const { widthMm, heightMm } = plan.inner
  const at = (along: number, offset: number): Point =>
    frame.upright
      ? { xMm: marginMm + widthMm / 2 + offset, yMm: marginMm + heightMm - along }
      : { xMm: marginMm + along, yMm: marginMm + heightMm / 2 + offset }
  const last = alongMm.at(-1) ?? 0
  return new Map([
    ...frame.bodies.map((body, index) => [body.id, at(alongMm[index] ?? 0, 0)] as const),
    ...frame.small.map(({ kind, offsetMm }) => [kind, at(last, offsetMm)] as const),
  ])
}

/**
 * A column along the longer side of the opening: drivers from the small to the large, then the ports, with control
 * and indicator beside the last port or, without room there, in a row of their own at the end.
 * @param webMm  least wood between holes, mm
 */
export function frontLayout(plan: BoxPlan, items: FrontItems, webMm: number): FrontLayout {
  const frame = frameOf(plan, items, webMm)
  const { centresMm, shortMm, overlapMm } = column(frame.bodies, frame.opening.alongMm, webMm)
  const widest = Math.max(0, ...frame.bodies.map((body) => body.acrossMm))
  const acrossMm = Math.max(0, widest - frame.opening.acrossMm)
  const fits = overlapMm === 0 && acrossMm === 0
  return { centres: fits ? centresOf(frame, plan, centresMm) : new Map(), shortMm, overlapMm, acrossMm }
}
