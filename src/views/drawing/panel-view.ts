import type { Hole, Panel } from '../../schema/panel.ts'
import { boltCircles } from './bolt-groups.ts'
import { lengthBelow, widthAtLeft } from './dimension.ts'
import type { Rectangle, Shape } from './drawing.ts'
import { holeLabels, holeSizeSaid, located } from './hole-labels.ts'
import { ordinatesAtLeft, ordinatesBelow } from './ordinates.ts'
import { bandShapes, centreMark, holeEdge, panelEdge } from './panel-shapes.ts'
import { onPaper, type Placement, placed } from './placed.ts'
import { roundScale } from './round-scale.ts'
import { at } from './shapes.ts'

/** Room that dimensions take left of and below a panel. */
const DIMENSIONS_MM = 10
const ORDINATES_MM = 15
const AIR_MM = 4
/** How far inside its edge the stroke of a band runs, and centre marks beyond the edge of a hole. */
const BAND_IN_MM = 1.2
const MARK_MM = 2

const ordinatesOf = (holes: readonly Hole[], side: 'xMm' | 'yMm', placement: Placement) =>
  located(holes).map((hole) => ({ valueMm: hole[side], placeMm: onPaper(hole, placement)[side] }))

const holeShapes = (panel: Panel, placement: Placement): Shape[] => [
  ...panel.holes
    .flatMap((hole) => [holeEdge(hole), centreMark(hole, MARK_MM / placement.scale)])
    .map((shape) => placed(shape, placement)),
  ...boltCircles(panel).map((shape) => placed(shape, placement)),
  ...holeLabels(panel, {
    placement,
    besideMm: ORDINATES_MM,
    nameOf: (hole) => `${hole.id} ${holeSizeSaid(hole)}`,
  }),
]

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
    ...bandShapes(panel, BAND_IN_MM / scale).map((shape) => placed(shape, placement)),
    ...holeShapes(panel, placement),
    ...ordinatesBelow(ordinatesOf(panel.holes, 'xMm', placement), bottom),
    ...ordinatesAtLeft(ordinatesOf(panel.holes, 'yMm', placement), left),
    ...lengthBelow(left, left + length, bottom, panel.lengthMm, dimensionsMm - 4),
    ...widthAtLeft(bottom, bottom + width, left, panel.widthMm, dimensionsMm - 4),
  ]
  return { shapes, times }
}
