import type { Panel } from '../../schema/panel.ts'
import type { DxfShape } from './dxf.ts'
import { figure, plural, sizeSaid } from './figures.ts'
import { holeEdge, panelEdge } from './panel-shapes.ts'
import { placed } from './placed.ts'
import { at, text } from './shapes.ts'
import { shortened } from './type-width.ts'

/** Room between panels, enough for any router bit. */
const APART_MM = 20
const LARGEST_TYPE_MM = 8

/** Name and number of pieces, inside the panel near its lower edge, small enough for it. */
function nameOf(panel: Panel): DxfShape {
  const sizeMm = Math.min(LARGEST_TYPE_MM, panel.widthMm / 6, panel.lengthMm / 12)
  const thickness = panel.thicknessMm === null ? '' : ` × ${figure(panel.thicknessMm)}`
  const words = `${panel.id}, ${plural(panel.count, 'piece')}, ${sizeSaid(panel)}${thickness}`
  return {
    layer: 'ENGRAVE',
    shape: text(at(sizeMm, sizeMm), shortened(words, panel.lengthMm - 2 * sizeMm, sizeMm), { sizeMm }),
  }
}

const shapesOf = (panel: Panel): DxfShape[] => [
  { layer: 'OUTLINE', shape: panelEdge(panel) },
  ...panel.holes.map(
    (hole): DxfShape => ({ layer: hole.through ? 'HOLES' : 'BLIND', shape: holeEdge(hole) }),
  ),
  nameOf(panel),
]

/** Each kind of panel once at its finished size, in a row with their lower edges level. */
export function panelsSideBySide(panels: readonly Panel[]): DxfShape[] {
  let xMm = 0
  return panels.flatMap((panel) => {
    const placement = { origin: at(xMm, 0), scale: 1 }
    xMm += panel.lengthMm + APART_MM
    return shapesOf(panel).map(({ layer, shape }) => ({ layer, shape: placed(shape, placement) }))
  })
}
