import type { Point } from './bolt-circle.ts'
import { column, columnMm } from './front-column.ts'
import { edgeGapMm, gapMm, type Opening } from './hole-gaps.ts'
import type { Footprint } from './panel-item.ts'

/** The part of a panel between the walls of its box, and the wood wanted there. */
export interface PanelRoom {
  lengthMm: number
  widthMm: number
  /** How far the walls begin inside the edges of the panel, mm. */
  insetMm: number
  /** Nothing that looks for a place goes below this height of the panel, mm. */
  floorMm: number
  webMm: number
}

/** Something that looks for a place on a panel. */
export interface Seeker {
  id: string
  footprint: Footprint
}

/** Room that something still wants, mm, along which side of the panel, and how much larger that would have to be. */
export interface Lacking {
  shortMm: number
  along: 'width' | 'height'
  growMm: number
}

/** Where the seekers lie by their names, and what is missing for those without a place. */
export interface Places {
  centres: Map<string, Point>
  lacking: Map<string, Lacking>
}

const widthOf = ({ diameterMm, slotWidthMm }: Footprint): number => diameterMm ?? slotWidthMm ?? 0
const heightOf = ({ diameterMm, slotHeightMm }: Footprint): number => diameterMm ?? slotHeightMm ?? 0

const openingAt = ({ id, footprint }: Seeker, centre: Point): Opening => ({ id, ...footprint, ...centre })

/** A stretch of the middle line that nothing lies across, and what goes there. */
interface Stretch {
  fromMm: number
  toMm: number
  seekers: Seeker[]
}

/**
 * The stretches of the middle line that are clear over a width, from the lowest up; the last one is there even where
 * nothing of it is left. Geometry.
 */
function stretches(room: PanelRoom, taken: readonly Opening[], acrossMm: number): Stretch[] {
  const middleMm = room.lengthMm / 2
  const bars = taken
    .filter((other) => Math.abs(other.xMm - middleMm) < (widthOf(other) + acrossMm) / 2 + room.webMm)
    .map((other) => ({ fromMm: other.yMm - heightOf(other) / 2, toMm: other.yMm + heightOf(other) / 2 }))
    .sort((a, b) => a.fromMm - b.fromMm)
  const topMm = room.widthMm - room.insetMm
  let fromMm = room.floorMm
  const clear = bars.map((bar): Stretch => {
    const stretch = { fromMm, toMm: Math.min(bar.fromMm, topMm), seekers: [] }
    fromMm = Math.max(fromMm, bar.toMm)
    return stretch
  })
  return [...clear.filter((one) => one.toMm > one.fromMm), { fromMm, toMm: topMm, seekers: [] }]
}

const bodiesOf = (seekers: readonly Seeker[]) =>
  seekers.map(({ footprint }) => ({
    alongMm: heightOf(footprint),
    acrossMm: widthOf(footprint),
    rimMm: 0,
    shelfMm: 0,
    clearMm: 0,
  }))

/** Room that a stretch lacks for its own and one more, webs included, mm; 0 or less when it takes it. Geometry. */
function lackMm({ fromMm, toMm, seekers }: Stretch, more: Seeker, webMm: number): number {
  const ends = { firstMm: webMm, lastMm: webMm }
  return columnMm(bodiesOf([...seekers, more]), webMm, ends) - (toMm - fromMm)
}

/** Middles of a stretch by name, spread over it. */
function spreadOver({ fromMm, toMm, seekers }: Stretch, { lengthMm, webMm }: PanelRoom): [string, Point][] {
  const ends = { firstMm: webMm, lastMm: webMm }
  const { centresMm } = column(bodiesOf(seekers), toMm - fromMm, webMm, ends)
  return seekers.map(({ id }, index) => [id, { xMm: lengthMm / 2, yMm: fromMm + (centresMm[index] ?? 0) }])
}

/**
 * The place nearest to a wanted one that keeps its webs: level with or beside a wall or something that lies there
 * already; null when there is none. Geometry.
 */
export function nearestPlace(
  seeker: Seeker,
  wanted: Point,
  taken: readonly Opening[],
  room: PanelRoom,
): Point | null {
  const { lengthMm, widthMm, insetMm, floorMm, webMm } = room
  const [halfX, halfY] = [widthOf(seeker.footprint) / 2, heightOf(seeker.footprint) / 2]
  const beside = (middle: (other: Opening) => number, halfOther: (other: Opening) => number, half: number) =>
    taken.flatMap((other) => [-1, 1].map((way) => middle(other) + way * (halfOther(other) + webMm + half)))
  const xs = [
    wanted.xMm,
    insetMm + webMm + halfX,
    lengthMm - insetMm - webMm - halfX,
    ...beside(
      ({ xMm }) => xMm,
      (other) => widthOf(other) / 2,
      halfX,
    ),
  ]
  const ys = [
    wanted.yMm,
    floorMm + webMm + halfY,
    widthMm - insetMm - webMm - halfY,
    ...beside(
      ({ yMm }) => yMm,
      (other) => heightOf(other) / 2,
      halfY,
    ),
  ]
  const keepsWebs = (centre: Point): boolean => {
    const opening = openingAt(seeker, centre)
    return (
      edgeGapMm(opening, lengthMm, widthMm, insetMm) >= webMm - DUST_MM &&
      centre.yMm - halfY >= floorMm &&
      taken.every((other) => gapMm(opening, other) >= webMm - DUST_MM)
    )
  }
  const away = ({ xMm, yMm }: Point): number => Math.hypot(xMm - wanted.xMm, yMm - wanted.yMm)
  const [nearest] = xs
    .flatMap((xMm) => ys.map((yMm) => ({ xMm, yMm })))
    .filter(keepsWebs)
    .sort((a, b) => away(a) - away(b))
  return nearest ?? null
}

const lackingWidth = (shortMm: number): Lacking => ({ shortMm, along: 'width', growMm: shortMm })

/** Webs are kept up to the dust of arithmetic, mm. */
const DUST_MM = 1e-9

/**
 * Places beside what lies there already: a column on the middle line, each in the first stretch of it that takes it
 * with its webs, and for what the column does not take the nearest place anywhere between the walls.
 * @param taken  holes and bodies that others have placed
 */
export function placesBeside(seekers: readonly Seeker[], taken: readonly Opening[], room: PanelRoom): Places {
  const openMm = room.lengthMm - 2 * room.insetMm
  const fitting = seekers.filter(({ footprint }) => widthOf(footprint) <= openMm)
  const widestMm = Math.max(0, ...fitting.map(({ footprint }) => widthOf(footprint)))
  const clear = stretches(room, taken, widestMm)
  const left = fitting.filter((seeker) => {
    const stretch = clear.find((one) => lackMm(one, seeker, room.webMm) <= DUST_MM)
    stretch?.seekers.push(seeker)
    return stretch === undefined
  })
  const centres = new Map(clear.flatMap((stretch) => spreadOver(stretch, room)))
  const lies = seekers.flatMap((seeker) => {
    const centre = centres.get(seeker.id)
    return centre === undefined ? [] : [openingAt(seeker, centre)]
  })
  const lacking = new Map<string, Lacking>()
  for (const seeker of seekers.filter((one) => !fitting.includes(one)))
    lacking.set(seeker.id, lackingWidth(widthOf(seeker.footprint) - openMm))
  for (const seeker of left) {
    const middle = { xMm: room.lengthMm / 2, yMm: room.widthMm / 2 }
    const found = nearestPlace(seeker, middle, [...taken, ...lies], room)
    if (found === null) {
      const lack = clear.map((stretch) => lackMm(stretch, seeker, room.webMm))
      lacking.set(seeker.id, {
        shortMm: Math.min(...lack),
        along: 'height',
        growMm: lack.at(-1) ?? 0,
      })
    } else {
      centres.set(seeker.id, found)
      lies.push(openingAt(seeker, found))
    }
  }
  return { centres, lacking }
}
