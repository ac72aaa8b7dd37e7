import type { Hole, Panel } from '../../schema/panel.ts'
import { type BoltGroup, boltGroups, boltsSaid } from './bolt-groups.ts'
import { lengthBelow, widthAtLeft } from './dimension.ts'
import type { Point, Rectangle, Shape } from './drawing.ts'
import { diameterSaid, sizeSaid } from './figures.ts'
import { labelShapes, type Taken } from './labels.ts'
import { ordinatesAtLeft, ordinatesBelow } from './ordinates.ts'
import { bandShapes, centreMark, holeEdge, holeReach, panelEdge } from './panel-shapes.ts'
import { onPaper, type Placement, placed } from './placed.ts'
import { roundScale } from './round-scale.ts'
import { at, circle, TYPE_MM } from './shapes.ts'
import { typeWidthMm } from './type-width.ts'

/** Room that dimensions take left of and below a panel. */
const DIMENSIONS_MM = 10
const ORDINATES_MM = 15
const AIR_MM = 4

const located = (holes: readonly Hole[]): Hole[] => holes.filter(({ kind }) => kind !== 'bolt')

/** Name and size of a hole as they stand on a drawing. */
export const holeSaid = (hole: Hole): string =>
  `${hole.id} ${
    hole.diameterMm === null
      ? sizeSaid({ lengthMm: hole.slotWidthMm ?? 0, widthMm: hole.slotHeightMm ?? 0 })
      : diameterSaid(hole.diameterMm)
  }`

/** Middles for a label of a hole: below and above its centre when it fits inside, else around the hole. */
function middlesFor(hole: Hole, words: string, placement: Placement): Point[] {
  const { xMm, yMm } = onPaper(hole, placement)
  const reach = holeReach(hole)
  const [x, y] = [placement.scale * reach.xMm, placement.scale * reach.yMm]
  const half = typeWidthMm(words, TYPE_MM) / 2
  const aside = x + half + 3.5
  const over = y + 4.5
  const around = [
    at(xMm + aside, yMm + 2.5),
    at(xMm - aside, yMm + 2.5),
    at(xMm, yMm - over),
    at(xMm, yMm + over),
    at(xMm + aside, yMm - 4),
    at(xMm - aside, yMm - 4),
  ]
  const inside = [at(xMm, yMm - 0.4 * y), at(xMm, yMm + 0.4 * y)]
  return half < 0.85 * x && y > 8 ? [...inside, ...around] : around
}

function boltShapes(group: BoltGroup, placement: Placement, taken: Taken): Shape[] {
  const centre = onPaper(group.around, placement)
  const radius = (placement.scale * group.circleMm) / 2
  const words = boltsSaid(group)
  const inner = placement.scale * holeReach(group.around).yMm
  const fits = typeWidthMm(words, TYPE_MM) < 1.5 * inner
  const outside = [at(centre.xMm, centre.yMm - radius - 5), at(centre.xMm, centre.yMm + radius + 5)]
  const inside = [at(centre.xMm, centre.yMm - 0.62 * inner), at(centre.xMm, centre.yMm + 0.62 * inner)]
  return [
    circle('centre', centre, radius),
    ...labelShapes({ words, middles: fits ? [...inside, ...outside] : outside, sizeMm: 2.4 }, taken),
  ]
}

const ordinatesOf = (holes: readonly Hole[], side: 'xMm' | 'yMm', placement: Placement) =>
  located(holes).map((hole) => ({ valueMm: hole[side], placeMm: onPaper(hole, placement)[side] }))

/** A circle small on paper still shows: its label must not lie on it. */
const takenBy = (hole: Hole, placement: Placement) => {
  const { xMm, yMm } = onPaper(hole, placement)
  const reach = placement.scale * Math.max(holeReach(hole).xMm, holeReach(hole).yMm) + 0.5
  return { left: xMm - reach, right: xMm + reach, top: yMm - reach, bottom: yMm + reach }
}

/** Largest hole whose middle may carry its own label, as drawn. */
const SMALL_HOLE_MM = 16

function holeShapes(panel: Panel, placement: Placement): Shape[] {
  const taken: Taken = {
    boxes: panel.holes
      .filter((hole) => placement.scale * 2 * holeReach(hole).xMm < SMALL_HOLE_MM)
      .map((hole) => takenBy(hole, placement)),
  }
  const edges = panel.holes.flatMap((hole) => [holeEdge(hole), centreMark(hole, 2 / placement.scale)])
  return [
    ...edges.map((shape) => placed(shape, placement)),
    ...located(panel.holes).flatMap((hole) => {
      const words = holeSaid(hole)
      return labelShapes({ words, middles: middlesFor(hole, words, placement) }, taken)
    }),
    ...boltGroups(panel.holes).flatMap((group) => boltShapes(group, placement, taken)),
  ]
}

/** A panel with its dimensions in a room on the paper, and how many times smaller it stands there. */
export function panelView(panel: Panel, room: Rectangle): { shapes: Shape[]; times: number } {
  const dimensionsMm = DIMENSIONS_MM + (panel.holes.length > 0 ? ORDINATES_MM : 0)
  const inner = {
    lengthMm: room.lengthMm - dimensionsMm - AIR_MM,
    widthMm: room.widthMm - dimensionsMm - AIR_MM,
  }
  const times = roundScale(panel, inner)
  const scale = 1 / times
  const [length, width] = [scale * panel.lengthMm, scale * panel.widthMm]
  const left = room.xMm + dimensionsMm + (inner.lengthMm - length) / 2
  const bottom = room.yMm + dimensionsMm + (inner.widthMm - width) / 2
  const placement = { origin: at(left, bottom), scale }
  const shapes = [
    placed(panelEdge(panel), placement),
    ...bandShapes(panel, 1.2 / scale).map((shape) => placed(shape, placement)),
    ...holeShapes(panel, placement),
    ...ordinatesBelow(ordinatesOf(panel.holes, 'xMm', placement), bottom),
    ...ordinatesAtLeft(ordinatesOf(panel.holes, 'yMm', placement), left),
    ...lengthBelow(left, left + length, bottom, panel.lengthMm, dimensionsMm - 4),
    ...widthAtLeft(bottom, bottom + width, left, panel.widthMm, dimensionsMm - 4),
  ]
  return { shapes, times }
}
