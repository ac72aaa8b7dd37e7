/** Something that takes room on the front, measured along the column and across it, mm. */
export interface Body {
  id: string
  alongMm: number
  acrossMm: number
  /** How far a flange reaches beyond its hole, mm. */
  rimMm: number
}

/** The room on the front: the inner opening, and how much more of the panel lies around it. */
export interface Opening {
  alongMm: number
  acrossMm: number
  /** Panel beyond the opening on each side, mm: the board thickness where the front covers the edges. */
  marginMm: number
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

/** Least gaps between neighbours: the web, or more where two flanges would meet. */
const gapsOf = (bodies: readonly Body[], webMm: number): number[] =>
  bodies.slice(1).map((body, index) => Math.max(webMm, body.rimMm + bodies[index]!.rimMm))

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)

/** End gap and gaps between for the room there is: even beyond the least, else the ends give way first. */
function spread(freeMm: number, gaps: readonly number[], webMm: number): { end: number; between: number[] } {
  const between = sum(gaps)
  const spare = freeMm - between - 2 * webMm
  if (spare >= 0) {
    const more = spare / (gaps.length + 2)
    return { end: webMm + more, between: gaps.map((gap) => gap + more) }
  }
  if (freeMm >= between) return { end: (freeMm - between) / 2, between: [...gaps] }
  return { end: 0, between: gaps.map((gap) => (gap * freeMm) / between) }
}

/** Least length of a column with webs between and at both ends, mm, without the boards around it. Geometry. */
export const columnMm = (bodies: readonly Body[], webMm: number): number =>
  sum(bodies.map((body) => body.alongMm)) + sum(gapsOf(bodies, webMm)) + 2 * webMm

/**
 * Spreads bodies along the opening: webs everywhere when they fit, thinner ones when only the holes do.
 * @param webMm  least wood between holes and to the inner wall, mm. Common practice, no source
 */
export function column(bodies: readonly Body[], alongMm: number, webMm: number): Column {
  const shortMm = Math.max(0, columnMm(bodies, webMm) - alongMm)
  const freeMm = alongMm - sum(bodies.map((body) => body.alongMm))
  if (freeMm < 0) return { centresMm: [], shortMm, overlapMm: -freeMm }
  const { end, between } = spread(freeMm, gapsOf(bodies, webMm), webMm)
  let reached = end
  const centresMm = bodies.map((body, index) => {
    const centre = reached + body.alongMm / 2
    reached += body.alongMm + (between[index] ?? 0)
    return centre
  })
  return { centresMm, shortMm, overlapMm: 0 }
}

/**
 * Centre of a small hole beside a body, measured from the middle of the opening, mm; null when webs to the body and
 * to the edge of the panel leave no room for it. Geometry.
 */
export function besideMm(body: Body, diameterMm: number, opening: Opening, webMm: number): number | null {
  const toWallMm = Math.max(0, webMm - opening.marginMm)
  const spareMm = (opening.acrossMm - body.acrossMm) / 2 - diameterMm - webMm - toWallMm
  return spareMm < 0 ? null : body.acrossMm / 2 + webMm + spareMm / 2 + diameterMm / 2
}
