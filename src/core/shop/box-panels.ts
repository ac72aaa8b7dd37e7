import type { Sides } from '../../schema/box.ts'
import type { CutListRequest } from '../../schema/cut-list.ts'
import type { Panel } from '../../schema/panel.ts'
import type { BoxPlan } from './box-plan.ts'
import { bandedEdges, type Edge } from './edging.ts'
import { jointPanels, type Role } from './joint-panels.ts'
import { boardMassKg, densityKgPerM3 } from './mass.ts'
import { panelResonance } from './panel-resonance.ts'

/** Panels of the whole set, without their holes. */
export function boxPanels(request: CutListRequest, plan: BoxPlan): Panel[] {
  const edges = request.workshop?.edging === undefined ? 'none' : (request.workshop.edging.edges ?? 'front')
  const density = densityKgPerM3(plan.material)
  const bandMm = request.workshop?.edging?.thicknessMm ?? 0
  const { thicknessMm } = plan.carcass
  return jointPanels(plan.carcass).map((panel) => {
    const banded = bandedEdges(plan.carcass, panel.role, edges)
    const less = (first: Edge, second: Edge) =>
      bandMm * banded.filter((edge) => edge === first || edge === second).length
    const [freeLength, freeWidth] = freeMm(panel.role, plan.inner)
    return {
      id: panel.role,
      count: panel.count * plan.boxes,
      lengthMm: panel.lengthMm,
      widthMm: panel.widthMm,
      thicknessMm,
      sawLengthMm: panel.lengthMm - less('left', 'right'),
      sawWidthMm: panel.widthMm - less('bottom', 'top'),
      grain: 'any',
      holes: [],
      bandedEdges: banded,
      resonance: panelResonance(freeLength, freeWidth, thicknessMm, plan.material, density),
      massKg: boardMassKg(panel.lengthMm * panel.widthMm * 1e-6, thicknessMm, density),
    }
  })
}

/** The part of a panel between the walls that hold it, mm. */
function freeMm(role: Role, { widthMm, heightMm, depthMm }: Sides): [number, number] {
  if (role === 'side') return [heightMm, depthMm]
  return role === 'top-bottom' ? [widthMm, depthMm] : [heightMm, widthMm]
}
