import { DRILL_CAUTION } from '../../core/shop/cautions.ts'
import type { Panel } from '../../schema/panel.ts'
import { boltCircles } from '../drawing/bolt-groups.ts'
import type { Drawing, Shape } from '../drawing/drawing.ts'
import { holeLabels, holeSizeSaid } from '../drawing/hole-labels.ts'
import { centreMark, holeEdge, panelEdge } from '../drawing/panel-shapes.ts'
import { moved } from '../drawing/placed.ts'
import { RULER_MM, ruler } from '../drawing/ruler.ts'
import { at, text } from '../drawing/shapes.ts'
import { wrapped } from '../drawing/type-width.ts'

/** What both papers leave free between margins of 10 mm, less the words above the panel. */
const ROOM = { lengthMm: 186, widthMm: 241 }
const BLEED_MM = 1
/** Arms of a cross beyond the edge of its hole: they still show when the hole is cut out. */
const CROSS_MM = 2.5
const HEAD_MM = 16
const NOTE_MM = 2.3

export const fitsASheet = ({ lengthMm, widthMm }: Panel): boolean =>
  lengthMm <= ROOM.lengthMm && widthMm <= ROOM.widthMm

const ORDER = 'Print at 100 % (actual size) and measure the ruler before drilling.'

/** The ruler at the head, and beside it or below what to mind. */
function headShapes(panel: Panel, widthMm: number): Shape[] {
  const beside = wrapped(`Template ${panel.id}. ${ORDER} ${DRILL_CAUTION}`, widthMm - RULER_MM - 12, NOTE_MM)
  return [
    ...ruler(at(2, 2)),
    ...beside.map((line, index) => text(at(RULER_MM + 9, 11.5 - 2.9 * index), line, { sizeMm: NOTE_MM })),
  ]
}

/**
 * A panel with its holes at true size below a ruler, for a sheet printed from a browser.
 * A browser may print smaller than asked, so that the ruler stands on the same sheet.
 */
export function trueSizeTemplate(panel: Panel): Drawing {
  const widthMm = ROOM.lengthMm + 2 * BLEED_MM
  const heightMm = panel.widthMm + 2 * BLEED_MM + HEAD_MM
  const shapes: Shape[] = [
    panelEdge(panel, 'mark'),
    ...panel.holes.flatMap((hole) => [holeEdge(hole), centreMark(hole, CROSS_MM, 'mark')]),
    ...boltCircles(panel),
    ...holeLabels(panel, {
      placement: { origin: at(0, 0), scale: 1 },
      besideMm: 0,
      nameOf: (hole) => `${hole.id} ${holeSizeSaid(hole)}`,
    }),
  ]
  return {
    title: `Template ${panel.id}`,
    says: `${panel.id} at true size with the centres of its holes. ${ORDER} ${DRILL_CAUTION}`,
    widthMm,
    heightMm,
    layers: [
      moved({ shapes }, at(BLEED_MM, BLEED_MM)),
      moved({ shapes: headShapes(panel, widthMm) }, at(0, heightMm - HEAD_MM + 1)),
    ],
  }
}
