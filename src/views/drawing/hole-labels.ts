import type { Hole, Panel } from '../../schema/panel.ts'
import { type BoltGroup, boltGroups, boltsSaid } from './bolt-groups.ts'
import type { Point, Rectangle, Shape } from './drawing.ts'
import { diameterSaid, sizeSaid } from './figures.ts'
import { boxOf, labelShapes, type Taken } from './labels.ts'
import { holeReach } from './panel-shapes.ts'
import { onPaper, type Placement } from './placed.ts'
import { at, TYPE_MM } from './shapes.ts'
import { typeWidthMm } from './type-width.ts'

const SMALL_TYPE_MM = 2.4
const LINE_MM = 3.8
/** From the edge of a panel to words beside it. */
const EDGE_AIR_MM = 0.8
/** From the edge of a hole, its centre mark included, to the middle of its label. */
const OVER_MM = 4.5
/** Strip along the edges of a panel that labels keep clear of, where a band may be drawn. */
const EDGE_MM = 2.4

export const located = (holes: readonly Hole[]): Hole[] => holes.filter(({ kind }) => kind !== 'bolt')

/** Size of a hole as it stands on a drawing. */
export const holeSizeSaid = ({ diameterMm, slotWidthMm, slotHeightMm }: Hole): string =>
  diameterMm === null
    ? sizeSaid({ lengthMm: slotWidthMm ?? 0, widthMm: slotHeightMm ?? 0 })
    : diameterSaid(diameterMm)

/** Where a label may stand. */
interface Around {
  placement: Placement
  /** Where words beside the panel begin. */
  asideMm: number
}

/**
 * Middles for a label of a hole: below and above its centre when it fits inside, else around the hole, at last beside
 * the panel at the height of the hole, if it is the only one that could be meant there.
 */
function middlesFor(hole: Hole, words: string, { placement, asideMm }: Around, rightmost: boolean): Point[] {
  const { xMm, yMm } = onPaper(hole, placement)
  const reach = holeReach(hole)
  const [x, y] = [placement.scale * reach.xMm, placement.scale * reach.yMm]
  const half = typeWidthMm(words, TYPE_MM) / 2
  const aside = x + half + 3.5
  const over = y + OVER_MM
  const around = [
    at(xMm, yMm - over),
    at(xMm, yMm + over),
    at(xMm + aside, yMm),
    at(xMm - aside, yMm),
    at(xMm, yMm - over - 4),
    at(xMm, yMm + over + 4),
    at(xMm, yMm - over - 8),
    at(xMm, yMm + over + 8),
    ...[-over, over].flatMap((up) => [at(xMm + half / 3, yMm + up), at(xMm - half / 3, yMm + up)]),
    ...(rightmost ? [at(asideMm + half, yMm + LINE_MM / 2)] : []),
  ]
  const inside = [at(xMm, yMm - 0.4 * y), at(xMm, yMm + 0.4 * y)]
  return half < 0.85 * x && y > 8 ? [...inside, ...around] : around
}

/** true when no other opening lies right of a hole at its height. */
function isRightmost(hole: Hole, holes: readonly Hole[]): boolean {
  const y = holeReach(hole).yMm
  return !located(holes).some(
    (other) => other.xMm > hole.xMm && Math.abs(other.yMm - hole.yMm) < y + holeReach(other).yMm,
  )
}

function boltLabel(group: BoltGroup, { placement, asideMm }: Around, taken: Taken): Shape[] {
  const { xMm, yMm } = onPaper(group.around, placement)
  const radius = (placement.scale * group.circleMm) / 2
  const words = boltsSaid(group)
  const width = typeWidthMm(words, SMALL_TYPE_MM)
  const inner = placement.scale * holeReach(group.around).yMm
  const inside = [at(xMm, yMm - 0.62 * inner), at(xMm, yMm + 0.62 * inner)]
  const outside = [
    at(xMm, yMm - radius - 5),
    at(xMm, yMm + radius + 5),
    at(asideMm + width / 2, yMm - LINE_MM / 2),
  ]
  const middles = width < 1.5 * inner ? [...inside, ...outside] : outside
  return labelShapes({ words, middles, sizeMm: SMALL_TYPE_MM }, taken)
}

/** What a hole takes up on the paper, the screws around it included. */
function takenBy(hole: Hole, groups: readonly BoltGroup[], placement: Placement): Taken['boxes'][number] {
  const reach = holeReach(hole)
  const circle = (groups.find(({ around }) => around === hole)?.circleMm ?? 0) / 2
  const [x, y] = [Math.max(reach.xMm, circle), Math.max(reach.yMm, circle)]
  return boxOf({
    ...onPaper(at(hole.xMm - x, hole.yMm - y), placement),
    lengthMm: 2 * placement.scale * x,
    widthMm: 2 * placement.scale * y,
  })
}

/**
 * The edges of the panel and the dimensions beside it, which no label should lie across.
 * @param besideMm  what dimensions take up left of and below the panel
 */
function edgeBoxes(
  { lengthMm, widthMm }: Panel,
  { origin, scale }: Placement,
  besideMm: number,
): Taken['boxes'] {
  const { xMm, yMm } = origin
  const [length, width] = [scale * lengthMm, scale * widthMm]
  const strips: Rectangle[] = [
    { xMm, yMm: yMm - besideMm, lengthMm: length, widthMm: besideMm + EDGE_MM },
    { xMm, yMm: yMm + width - EDGE_MM, lengthMm: length, widthMm: EDGE_MM },
    { xMm: xMm - besideMm, yMm, lengthMm: besideMm + EDGE_MM, widthMm: width },
    { xMm: xMm + length - EDGE_MM, yMm, lengthMm: EDGE_MM + EDGE_AIR_MM, widthMm: width },
  ]
  return strips.map(boxOf)
}

interface Naming {
  placement: Placement
  /** What dimensions take up left of and below the panel. */
  besideMm: number
  nameOf: (hole: Hole) => string
}

/** Names and sizes of the holes of a panel, and of the screws around them, clear of each other where that can be. */
export function holeLabels(panel: Panel, { placement, besideMm, nameOf }: Naming): Shape[] {
  const around = {
    placement,
    asideMm: placement.origin.xMm + placement.scale * panel.lengthMm + 2 * EDGE_AIR_MM,
  }
  const groups = boltGroups(panel.holes)
  const taken: Taken = { boxes: edgeBoxes(panel, placement, besideMm) }
  const names = located(panel.holes).flatMap((hole) => {
    const words = nameOf(hole)
    const others = panel.holes
      .filter((other) => other !== hole)
      .map((other) => takenBy(other, groups, placement))
    const here: Taken = { boxes: [...taken.boxes, ...others] }
    const name = labelShapes(
      { words, middles: middlesFor(hole, words, around, isRightmost(hole, panel.holes)) },
      here,
    )
    taken.boxes.push(...here.boxes.slice(-1))
    return name
  })
  return [...names, ...groups.flatMap((group) => boltLabel(group, around, taken))]
}
