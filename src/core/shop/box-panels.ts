import type { CutListRequest } from '../../schema/cut-list.ts'
import type { Hole, Panel } from '../../schema/panel.ts'
import type { BoxPlan } from './box-plan.ts'
import { bandedEdges } from './edging.ts'
import { cableHole } from './holes.ts'
import { type JointPanel, jointPanels } from './joint-panels.ts'
import { boardMassKg, densityKgPerM3 } from './mass.ts'

/** Panels of the whole set, the front without its holes. */
export function boxPanels(request: CutListRequest, plan: BoxPlan): Panel[] {
  const edges = request.workshop?.edging === undefined ? 'none' : (request.workshop.edging.edges ?? 'front')
  const density = densityKgPerM3(plan.material)
  return jointPanels(plan.carcass).map((panel) => ({
    id: panel.role,
    count: panel.count * plan.boxes,
    lengthMm: panel.lengthMm,
    widthMm: panel.widthMm,
    thicknessMm: plan.carcass.thicknessMm,
    sawLengthMm: panel.lengthMm,
    sawWidthMm: panel.widthMm,
    grain: 'any',
    holes: holesIn(panel, plan),
    bandedEdges: bandedEdges(plan.carcass, panel.role, edges),
    massKg: boardMassKg(panel.lengthMm * panel.widthMm * 1e-6, plan.carcass.thicknessMm, density),
  }))
}

const holesIn = ({ role, lengthMm, widthMm }: JointPanel, plan: BoxPlan): Hole[] =>
  role === 'back' ? [cableHole(lengthMm, widthMm, plan)] : []
