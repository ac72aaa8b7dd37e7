import type { Workshop } from '../../schema/shop.ts'
import type { Formula } from '../working.ts'
import type { NamedPart, NamedStock } from './board-sections.ts'
import type { BoxPlan } from './box-plan.ts'
import { USUAL_OVERHANG_MM } from './edging.ts'

const GEOMETRY = 'geometry'

/** The sums about a box as printed formulas. */
export function boxFormulas(plan: BoxPlan, edgesMm: readonly number[], strip: Workshop['edging']): Formula[] {
  const { outer, thicknessMm } = plan.carcass
  const volume: Formula = {
    quantity: 'air inside the walls',
    formula: '(W - 2 t) * (H - 2 t) * (D - 2 t) / 1e6',
    with: { W: outer.widthMm, H: outer.heightMm, D: outer.depthMm, t: thicknessMm },
    unit: 'L',
    source: GEOMETRY,
  }
  if (strip === undefined || edgesMm.length === 0) return [volume]
  const band: Formula = {
    quantity: 'length of all edge bands',
    formula: 'edgeLength + edges * 2 * overhang',
    with: {
      edgeLength: edgesMm.reduce((sum, edge) => sum + edge, 0),
      edges: edgesMm.length,
      overhang: strip.overhangMm ?? USUAL_OVERHANG_MM,
    },
    unit: 'mm',
    source: GEOMETRY,
  }
  return [volume, band]
}

/** The area bound of boards of one kind as a printed formula. */
export function boardFormulas(
  parts: readonly NamedPart[],
  stock: readonly NamedStock[],
  kerfMm: number,
): Formula[] {
  const [board] = stock
  if (board === undefined || stock.length > 1) return []
  const usableMm = Math.min(board.lengthMm, board.widthMm) - 2 * (board.trimMm ?? 0)
  if (usableMm <= 0) return []
  const enlarged = parts.reduce(
    (sum, { lengthMm, widthMm, count = 1 }) => sum + count * (lengthMm + kerfMm) * (widthMm + kerfMm),
    0,
  )
  return [
    {
      quantity: 'fewest boards by area',
      formula: 'ceil(parts / ((L - 2 trim + k) * (W - 2 trim + k)))',
      with: { parts: enlarged, L: board.lengthMm, W: board.widthMm, trim: board.trimMm ?? 0, k: kerfMm },
      unit: '',
      source: 'every part and the usable board one kerf larger both ways; derived',
    },
  ]
}
