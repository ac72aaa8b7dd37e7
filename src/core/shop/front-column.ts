/** Something that takes room on the front, measured along the column and across it, mm. */
export interface Body {
  alongMm: number
  acrossMm: number
  /** How far a flange reaches beyond its hole, mm. */
  rimMm: number
  /** How far the boards of a duct reach beyond its hole inside, mm. */
  shelfMm: number
  /** Room wanted to a wall, mm; it gives way before any web does. */
  clearMm: number
}

/** The room on the front: the inner opening, and how much more of the panel lies around it. */
export interface Opening {
  alongMm: number
  acrossMm: number
  /** Panel beyond the opening on each side, mm: the board thickness where the front covers the edges. */
  marginMm: number
}

/** Least wood before the first body of a column and after the last, mm. */
export interface Ends {
  firstMm: number
  lastMm: number
}

/** Where the bodies of a column lie. */
export interface Column {
  /** Centres along the opening from its first end, mm, in the order of the bodies. */
  centresMm: number[]
  /** Room wanted beyond what there is, mm; 0 when the webs are kept everywhere. */
  shortMm: number
  /** Room by which the bodies themselves are too long, mm; then there are no centres. */
  overlapMm: number
}

/** Least gaps between neighbours: the web, or more where two flanges or two ducts would meet. */
const gapsOf = (bodies: readonly Body[], webMm: number): number[] =>
  bodies
    .slice(1)
    .map((body, index) =>
      Math.max(webMm, body.rimMm + bodies[index]!.rimMm, body.shelfMm + bodies[index]!.shelfMm),
    )

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)

/** End gap that keeps every body as far from the wall as it wants; a body nearer the wall counts as room. */
function clearedEndMm(bodies: readonly Body[], gaps: readonly number[], leastMm: number): number {
  let beforeMm = 0
  return bodies.reduce((end, body, index) => {
    const wanted = Math.max(end, body.clearMm - beforeMm)
    beforeMm += body.alongMm + (gaps[index] ?? 0)
    return wanted
  }, leastMm)
}

const clearedEnds = (bodies: readonly Body[], gaps: readonly number[], ends: Ends): Ends => ({
  firstMm: clearedEndMm(bodies, gaps, ends.firstMm),
  lastMm: clearedEndMm(bodies.toReversed(), gaps.toReversed(), ends.lastMm),
})

/**
 * First end gap and gaps between for the room there is. Spare room goes to all alike; where it is short, first the
 * room wanted to the walls gives way, then the webs at the ends, then those between.
 */
function spread(
  freeMm: number,
  gaps: readonly number[],
  least: Ends,
  cleared: Ends,
): { first: number; between: number[] } {
  const between = sum(gaps)
  const forEnds = freeMm - between
  const leastEnds = least.firstMm + least.lastMm
  const clearedBoth = cleared.firstMm + cleared.lastMm
  if (forEnds >= clearedBoth) {
    const more = (forEnds - clearedBoth) / (gaps.length + 2)
    return { first: cleared.firstMm + more, between: gaps.map((gap) => gap + more) }
  }
  if (forEnds >= leastEnds) {
    const share = (forEnds - leastEnds) / (clearedBoth - leastEnds)
    return { first: least.firstMm + share * (cleared.firstMm - least.firstMm), between: [...gaps] }
  }
  if (forEnds >= 0) return { first: (forEnds * least.firstMm) / leastEnds, between: [...gaps] }
  return { first: 0, between: gaps.map((gap) => (gap * freeMm) / between) }
}

/** Least length of a column with webs between and at both ends, mm, without the boards around it. Geometry. */
export const columnMm = (bodies: readonly Body[], webMm: number, ends: Ends): number =>
  sum(bodies.map((body) => body.alongMm)) + sum(gapsOf(bodies, webMm)) + ends.firstMm + ends.lastMm

/** Length of a column that also keeps the room wanted to the walls, mm. Geometry. */
export const clearColumnMm = (bodies: readonly Body[], webMm: number, ends: Ends): number =>
  columnMm(bodies, webMm, clearedEnds(bodies, gapsOf(bodies, webMm), ends))

/**
 * Spreads bodies along the opening: webs everywhere when they fit, thinner ones when only the holes do.
 * @param webMm  least wood between holes, mm. Common practice, no source
 * @param ends   least wood to the inner walls, mm. Common practice, no source
 */
export function column(bodies: readonly Body[], alongMm: number, webMm: number, ends: Ends): Column {
  const shortMm = Math.max(0, columnMm(bodies, webMm, ends) - alongMm)
  const freeMm = alongMm - sum(bodies.map((body) => body.alongMm))
  if (freeMm < 0) return { centresMm: [], shortMm, overlapMm: -freeMm }
  const gaps = gapsOf(bodies, webMm)
  const { first, between } = spread(freeMm, gaps, ends, clearedEnds(bodies, gaps, ends))
  let reached = first
  const centresMm = bodies.map((body, index) => {
    const centre = reached + body.alongMm / 2
    reached += body.alongMm + (between[index] ?? 0)
    return centre
  })
  return { centresMm, shortMm, overlapMm: 0 }
}

/** Wood that a hole still needs beside it within the opening, where the panel ends there or soon after, mm. */
export const toWallMm = ({ marginMm }: Opening, webMm: number): number => Math.max(0, webMm - marginMm)

/**
 * Centre of a small hole beside a body, measured from the middle of the opening, mm; null when webs to the body and
 * to the edge of the panel leave no room for it. Geometry.
 */
export function besideMm(
  { acrossMm }: Pick<Body, 'acrossMm'>,
  diameterMm: number,
  opening: Opening,
  webMm: number,
): number | null {
  const spareMm = (opening.acrossMm - acrossMm) / 2 - diameterMm - webMm - toWallMm(opening, webMm)
  return spareMm < 0 ? null : acrossMm / 2 + webMm + spareMm / 2 + diameterMm / 2
}
