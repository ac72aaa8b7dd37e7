import type { Panel } from '../../schema/panel.ts'
import type { Shape } from './drawing.ts'
import { figure } from './figures.ts'
import { at, line } from './shapes.ts'

type Banded = Pick<Panel, 'lengthMm' | 'widthMm' | 'sawLengthMm' | 'sawWidthMm' | 'bandedEdges'>

/** Edges that get a band, in words. */
export const bandedSaid = ({ bandedEdges }: Pick<Panel, 'bandedEdges'>): string =>
  bandedEdges.length === 4 ? 'all edges' : bandedEdges.join(', ')

/** Thickness of the bands by which a panel is sawn smaller, mm; 0 without bands, or where it is not counted. */
function bandMm({ lengthMm, widthMm, sawLengthMm, sawWidthMm, bandedEdges }: Banded): number {
  const ends = bandedEdges.filter((edge) => edge === 'left' || edge === 'right').length
  const sides = bandedEdges.length - ends
  if (ends > 0) return (lengthMm - sawLengthMm) / ends
  return sides > 0 ? (widthMm - sawWidthMm) / sides : 0
}

/** Where the wood ends while the bands are missing: a fine line inside each edge that gets one. */
export function woodEdges(panel: Banded): Shape[] {
  const band = bandMm(panel)
  if (band <= 0) return []
  const [right, top] = [panel.lengthMm - band, panel.widthMm - band]
  const lines = {
    left: [at(band, 0), at(band, panel.widthMm)],
    right: [at(right, 0), at(right, panel.widthMm)],
    bottom: [at(0, band), at(panel.lengthMm, band)],
    top: [at(0, top), at(panel.lengthMm, top)],
  } as const
  return panel.bandedEdges.map((edge) => line('hatch', ...lines[edge]))
}

/** What to mind on a template while the bands are missing; nothing for a panel without bands. */
export function missingBandsSaid(panel: Banded): string[] {
  if (panel.bandedEdges.length === 0) return []
  const band = bandMm(panel)
  const edges = bandedSaid(panel)
  return band > 0
    ? [
        `The outline is that with bands of ${figure(band)} mm on ${edges}. While they are missing, the wood ends ${figure(band)} mm inside it, at the fine lines.`,
      ]
    : [`Bands come on ${edges}; their thickness is not given, so the outline leaves them out.`]
}
