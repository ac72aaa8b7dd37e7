import type { Hole } from '../../schema/panel.ts'

/** What a gap is measured from: a round hole, or a slot without a diameter. */
export type Opening = Pick<Hole, 'id' | 'xMm' | 'yMm' | 'diameterMm' | 'slotWidthMm' | 'slotHeightMm'>

/** The narrowest wood on a panel, and between what. */
export interface Web {
  webMm: number
  between: [string, string]
}

const radius = (hole: Opening): number => (hole.diameterMm ?? 0) / 2
const halfWidth = (hole: Opening): number => (hole.slotWidthMm ?? 0) / 2
const halfHeight = (hole: Opening): number => (hole.slotHeightMm ?? 0) / 2

/** Wood between two holes, mm, below zero by how far they overlap. Geometry. */
export function gapMm(a: Opening, b: Opening): number {
  const x = Math.abs(a.xMm - b.xMm) - halfWidth(a) - halfWidth(b)
  const y = Math.abs(a.yMm - b.yMm) - halfHeight(a) - halfHeight(b)
  const corner = Math.hypot(Math.max(0, x), Math.max(0, y)) + Math.min(0, Math.max(x, y))
  return corner - radius(a) - radius(b)
}

/** Wood between a hole and the nearest edge of a panel that begins `insetMm` inside, mm. Geometry. */
export function edgeGapMm(hole: Opening, lengthMm: number, widthMm: number, insetMm = 0): number {
  const x = Math.min(hole.xMm, lengthMm - hole.xMm) - radius(hole) - halfWidth(hole)
  const y = Math.min(hole.yMm, widthMm - hole.yMm) - radius(hole) - halfHeight(hole)
  return Math.min(x, y) - insetMm
}

/**
 * The narrowest web of a panel, between holes or to an edge; null without holes. Geometry.
 * @param open  holes that are meant to reach the edge
 */
export function narrowestWeb(
  holes: readonly Opening[],
  lengthMm: number,
  widthMm: number,
  open: readonly Opening[] = [],
): Web | null {
  let least: Web | null = null
  const offer = (webMm: number, a: string, b: string) => {
    if (least === null || webMm < least.webMm) least = { webMm, between: [a, b] }
  }
  holes.forEach((hole, index) => {
    if (!open.includes(hole)) offer(edgeGapMm(hole, lengthMm, widthMm), hole.id, 'edge')
    for (const other of holes.slice(index + 1)) offer(gapMm(hole, other), hole.id, other.id)
  })
  return least
}
