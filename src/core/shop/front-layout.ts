import type { Point } from './bolt-circle.ts'
import type { BoxPlan } from './box-plan.ts'
import { ductLengthMm } from './duct.ts'
import { type FloorBand, floorBand } from './floor-slots.ts'
import type { FrontItems } from './front-bodies.ts'
import { clearColumnMm, column, columnMm, type Ends } from './front-column.ts'
import { acrossClearMm, acrossWantedMm, type Room, type Row, type Rows, rowsOf } from './front-rows.ts'
import { frontCovers } from './joint-panels.ts'

/** Least web when the workshop does not say, mm; the board counts when it is thicker. Common practice, no source. */
const LEAST_WEB_MM = 8

/** Least wood between holes, mm: as asked, else 8 mm or the board, whichever is more. Common practice, no source. */
export const leastWebMm = (askedMm: number | undefined, thicknessMm: number): number =>
  askedMm ?? Math.max(LEAST_WEB_MM, thicknessMm)

/** Where everything on the front lies, or by how much it does not fit. */
export interface FrontLayout {
  /** Centres on the panel, from its lower left corner; empty when the holes do not fit. */
  centres: Map<string, Point>
  /** true when the column stands, so that its length is a height. */
  upright: boolean
  /** Room wanted along the column beyond what there is, mm. */
  shortMm: number
  /** Room by which the holes alone are too long for the opening, mm. */
  overlapMm: number
  /** Room by which the widest hole exceeds the opening, mm. */
  acrossMm: number
  /** Room wanted across the column beyond what there is, mm. */
  acrossShortMm: number
  /** true when control and indicator take a row of their own. */
  smallRow: boolean
}

interface Frame extends Room {
  ends: Ends
  band: FloorBand
}

/** The opening that slots on the floor leave to the column, and which way the column runs. */
function frameOf(plan: BoxPlan, items: FrontItems, webMm: number): Frame {
  const { thicknessMm } = plan.carcass
  const shelfMm = ductLengthMm(plan) === null ? 0 : thicknessMm
  const rims = items.drivers.map(({ frame, holeMm }) => (frame.outerDiameterMm - holeMm) / 2)
  const band = floorBand(items.ports, plan.inner, thicknessMm, webMm, Math.max(webMm, shelfMm, ...rims))
  const { widthMm } = plan.inner
  const heightMm = plan.inner.heightMm - band.heightMm
  const upright = heightMm >= widthMm
  return {
    opening: {
      alongMm: upright ? heightMm : widthMm,
      acrossMm: upright ? widthMm : heightMm,
      marginMm: frontCovers(plan.carcass) ? thicknessMm : 0,
    },
    upright,
    webMm,
    shelfMm,
    // The land above a slot on the floor is the web there.
    ends: { firstMm: webMm, lastMm: upright && band.heightMm > 0 ? 0 : webMm },
    band,
  }
}

const keepsClear = (rows: readonly Row[], frame: Frame): boolean =>
  acrossClearMm(rows, frame) <= frame.opening.acrossMm &&
  clearColumnMm(rows, frame.webMm, frame.ends) <= frame.opening.alongMm

const keepsWebsAcross = (rows: readonly Row[], frame: Frame): boolean =>
  acrossWantedMm(rows, frame) <= frame.opening.acrossMm

const keepsWebs = (rows: readonly Row[], frame: Frame): boolean =>
  keepsWebsAcross(rows, frame) && columnMm(rows, frame.webMm, frame.ends) <= frame.opening.alongMm

const upTo = (most: number): number[] => Array.from({ length: Math.max(1, most) }, (_, index) => index + 1)

/**
 * One column of drivers, or more side by side where one is too long for the front; ports side by side as far as the
 * width allows. Of a number of columns first a way that keeps all webs and the room to the walls, then one that keeps
 * the webs. Where none does, one column whose webs are thin along it at least keeps those across.
 */
function chosenRows(items: FrontItems, frame: Frame): Rows {
  const ports = items.floor ? [] : items.ports
  const portWays = frame.upright ? upTo(ports.length).toReversed() : upTo(ports.length)
  const waysWith = (drivers: number): Rows[] =>
    portWays.map((perRow) => rowsOf({ ...items, ports }, { drivers, ports: perRow }, frame))
  for (const drivers of upTo(items.drivers.length)) {
    const ways = waysWith(drivers)
    const kept =
      ways.find(({ rows }) => keepsClear(rows, frame)) ?? ways.find(({ rows }) => keepsWebs(rows, frame))
    if (kept !== undefined) return kept
  }
  return (
    waysWith(1).find(({ rows }) => keepsWebsAcross(rows, frame)) ??
    rowsOf({ ...items, ports }, { drivers: 1, ports: 1 }, frame)
  )
}

/** Centres on the panel, from its lower left corner; an upright column is counted from the top. */
function centresOf(
  { opening, upright, band }: Frame,
  plan: BoxPlan,
  rows: readonly Row[],
  alongMm: readonly number[],
): Map<string, Point> {
  const { marginMm } = opening
  const { widthMm, heightMm } = plan.inner
  const middleMm = band.heightMm + (heightMm - band.heightMm) / 2
  const at = (along: number, offset: number): Point =>
    upright
      ? { xMm: marginMm + widthMm / 2 + offset, yMm: marginMm + heightMm - along }
      : { xMm: marginMm + along, yMm: marginMm + middleMm + offset }
  return new Map([
    ...rows.flatMap((row, index) =>
      row.members.map(({ id, offsetMm }) => [id, at(alongMm[index] ?? 0, offsetMm)] as const),
    ),
    ...[...band.centres].map(
      ([id, { xMm, yMm }]) => [id, { xMm: marginMm + xMm, yMm: marginMm + yMm }] as const,
    ),
  ])
}

/**
 * A column along the longer side of the opening: drivers from the small to the large, in more columns where one is
 * too long, then the ports, with control and indicator beside the last port or, without room there, in a row of their
 * own at the end. Slots on a wall lie on the inner floor, below or beside the column.
 * @param webMm  least wood between holes, mm
 */
export function frontLayout(plan: BoxPlan, items: FrontItems, webMm: number): FrontLayout {
  const frame = frameOf(plan, items, webMm)
  const { rows, smallRow } = chosenRows(items, frame)
  const { centresMm, shortMm, overlapMm } = column(rows, frame.opening.alongMm, webMm, frame.ends)
  const beyond = (wantedMm: number) => Math.max(0, wantedMm - frame.opening.acrossMm)
  const acrossMm = Math.max(
    beyond(Math.max(0, ...rows.map((row) => row.acrossMm))),
    frame.band.acrossMm - plan.inner.widthMm,
  )
  const fits = overlapMm === 0 && acrossMm === 0
  return {
    centres: fits ? centresOf(frame, plan, rows, centresMm) : new Map(),
    upright: frame.upright,
    shortMm,
    overlapMm,
    acrossMm,
    acrossShortMm: beyond(acrossWantedMm(rows, frame)),
    smallRow,
  }
}
