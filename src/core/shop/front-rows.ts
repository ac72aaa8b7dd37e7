import type { FrontDriver, FrontItems, FrontPort, SmallHole } from './front-bodies.ts'
import { type Body, besideMm, type Opening, toWallMm } from './front-column.ts'

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)

/** Holes side by side at one height of the column, by their distance from its middle line. */
export interface Row extends Body {
  members: { id: string; offsetMm: number }[]
}

/** What rows need to know about the front they go on. */
export interface Room {
  opening: Opening
  /** true when the column stands. */
  upright: boolean
  webMm: number
  /** Board that a duct of its own adds around its slot, mm; 0 without one. */
  shelfMm: number
}

const rimMm = ({ frame, holeMm }: FrontDriver): number => Math.max(0, (frame.outerDiameterMm - holeMm) / 2)

/** Drivers side by side, webs or flanges apart, with a fair share of what room is left. Geometry. */
function driverRow(drivers: readonly FrontDriver[], { opening, webMm }: Room): Row {
  const rims = drivers.map(rimMm)
  const holes = drivers.map(({ holeMm }) => holeMm)
  const gaps = rims.slice(1).map((rim, index) => Math.max(webMm, rim + rims[index]!))
  // A flange may lie on the edge of the wall behind it, but not reach beyond the panel.
  const endMm = Math.max(toWallMm(opening, webMm), Math.max(...rims) - opening.marginMm)
  const leastMm = sum(holes) + sum(gaps)
  const share =
    drivers.length === 1 ? 0 : Math.max(0, opening.acrossMm - 2 * endMm - leastMm) / (drivers.length + 1)
  const acrossMm = leastMm + share * gaps.length
  let reached = -acrossMm / 2
  const members = drivers.map(({ id, holeMm }, index) => {
    const offsetMm = reached + holeMm / 2
    reached += holeMm + (gaps[index] ?? 0) + share
    return { id, offsetMm }
  })
  return {
    alongMm: Math.max(...holes),
    acrossMm,
    rimMm: Math.max(...rims),
    shelfMm: 0,
    clearMm: 0,
    members,
  }
}

/** Drivers in their order, so many of a kind in a row. */
function driverRows({ drivers }: FrontItems, perRow: number, room: Room): Row[] {
  const kinds = [...new Set(drivers.map(({ at }) => at))]
  return kinds.flatMap((kind) => {
    const alike = drivers.filter(({ at }) => at === kind)
    return Array.from({ length: Math.ceil(alike.length / perRow) }, (_, row) =>
      driverRow(alike.slice(row * perRow, (row + 1) * perRow), room),
    )
  })
}

function slotRow({ id, slot }: FrontPort, { upright, shelfMm }: Room): Row {
  const [width, height] = [slot?.widthMm ?? 0, slot?.heightMm ?? 0]
  return {
    alongMm: upright ? height : width,
    acrossMm: upright ? width : height,
    rimMm: 0,
    shelfMm,
    clearMm: shelfMm,
    members: [{ id, offsetMm: 0 }],
  }
}

/**
 * Distance between the centres of ports in a row, mm: as wanted, where webs and the room to the walls allow it.
 * Geometry.
 */
function pitchMm({ holeMm, spacingMm, clearMm }: FrontPort, inRow: number, { opening, webMm }: Room): number {
  const most = (opening.acrossMm - holeMm - 2 * clearMm) / (inRow - 1)
  return Math.max(holeMm + webMm, Math.min(spacingMm, most))
}

function portRow(ports: readonly FrontPort[], pitch: number): Row {
  const holeMm = ports[0]?.holeMm ?? 0
  return {
    alongMm: holeMm,
    acrossMm: holeMm + (ports.length - 1) * pitch,
    rimMm: 0,
    shelfMm: 0,
    clearMm: ports[0]?.clearMm ?? 0,
    members: ports.map(({ id }, index) => ({ id, offsetMm: (index - (ports.length - 1) / 2) * pitch })),
  }
}

/** Equal ports, so many in a row. */
function portRows(ports: readonly FrontPort[], perRow: number, room: Room): Row[] {
  const [first] = ports
  if (first === undefined) return []
  if (first.slot !== null) return ports.map((port) => slotRow(port, room))
  const pitch = perRow > 1 ? pitchMm(first, perRow, room) : 0
  return Array.from({ length: Math.ceil(ports.length / perRow) }, (_, row) =>
    portRow(ports.slice(row * perRow, (row + 1) * perRow), pitch),
  )
}

function smallRow(small: readonly SmallHole[], { opening, webMm }: Room): Row {
  const diameters = small.map((hole) => hole.diameterMm)
  const sides = small.length === 1 ? [0] : [1, -1]
  return {
    alongMm: Math.max(...diameters),
    acrossMm: diameters.reduce((sum, diameter) => sum + diameter, 0) + webMm * (small.length - 1),
    rimMm: 0,
    shelfMm: 0,
    clearMm: 0,
    members: small.map(({ kind }, index) => ({
      id: kind,
      offsetMm: ((sides[index] ?? 0) * opening.acrossMm) / 4,
    })),
  }
}

/** Small holes left and right of a row; null when one of them finds no room there. */
function besideRow(row: Row, small: readonly SmallHole[], { opening, webMm }: Room): Row | null {
  const members = small.flatMap(({ kind, diameterMm }, index) => {
    const beside = besideMm(row, diameterMm, opening, webMm)
    return beside === null ? [] : [{ id: kind, offsetMm: index === 0 ? beside : -beside }]
  })
  return members.length < small.length ? null : { ...row, members: [...row.members, ...members] }
}

/** The rows of a column, first to last, and whether the small holes take one of their own. */
export interface Rows {
  rows: Row[]
  smallRow: boolean
}

/** How many go side by side. */
export interface PerRow {
  drivers: number
  ports: number
}

/**
 * Drivers in order, then the ports, so many in a row, with control and indicator beside the last of them or, without
 * room there, in a row of their own.
 */
export function rowsOf(items: FrontItems, perRow: PerRow, room: Room): Rows {
  const ports = portRows(items.ports, perRow.ports, room)
  const before = [...driverRows(items, perRow.drivers, room), ...ports.slice(0, -1)]
  const last = ports.at(-1)
  const all = last === undefined ? before : [...before, last]
  if (items.small.length === 0) return { rows: all, smallRow: false }
  const shared = last === undefined ? null : besideRow(last, items.small, room)
  return shared === null
    ? { rows: [...all, smallRow(items.small, room)], smallRow: true }
    : { rows: [...before, shared], smallRow: false }
}

/** Room that the widest row wants across the opening, mm, with webs to the edges of the panel. Geometry. */
export const acrossWantedMm = (rows: readonly Row[], { opening, webMm }: Room): number =>
  Math.max(0, ...rows.map((row) => row.acrossMm + 2 * toWallMm(opening, webMm)))

/** The same, mm, when every row also keeps its room to the walls. Geometry. */
export const acrossClearMm = (rows: readonly Row[], { opening, webMm }: Room): number =>
  Math.max(0, ...rows.map((row) => row.acrossMm + 2 * Math.max(row.clearMm, toWallMm(opening, webMm))))
