import type { CutListRequest, Hardware } from '../../schema/cut-list.ts'
import type { Hole } from '../../schema/panel.ts'
import { mm } from '../say.ts'
import type { BoxPlan } from './box-plan.ts'
import { gluedEdgesMm } from './joint-panels.ts'
import { clearanceMm, coreMm, countersinkMm, edgeScrews, leadBitMm } from './screws.ts'

type Screw = NonNullable<NonNullable<NonNullable<CutListRequest['workshop']>['screws']>['panel']>

/** How to drill for a screw through one board into the edge of the next. */
function drillFor({ diameterMm, lengthMm, countersunk }: Screw, { carcass, material }: BoxPlan): string {
  const pilotMm = leadBitMm(coreMm(diameterMm), material)
  // One millimetre deeper than the screw goes in. European MDF industry guidance.
  const depthMm = Math.max(0, lengthMm - carcass.thicknessMm) + 1
  // The tongue of a rebate ends that much nearer to the outside.
  const nearer = carcass.joint === 'rebate' ? `, ${mm(carcass.rebateDepthMm)} deeper in a rebate` : ''
  // Heads are about twice the shank: common practice, no source.
  const sunk = countersunk ? ` Countersink ${mm(countersinkMm(2 * diameterMm, diameterMm))}.` : ''
  return `Drill ${mm(clearanceMm(diameterMm))} through the covering board in the middle of the edge below, ${mm(pilotMm)} for ${mm(depthMm)} into that edge${nearer}.${sunk}`
}

function panelScrews(request: CutListRequest, plan: BoxPlan): Hardware[] {
  const screw = request.workshop?.screws?.panel
  if (screw === undefined || plan.carcass.joint === 'mitre') return []
  const each = gluedEdgesMm(plan.carcass).reduce((sum, edge) => sum + edgeScrews(edge), 0)
  if (each === 0) return []
  const note = `At least 70 mm from every corner, 150 mm apart at most. ${drillFor(screw, plan)}`
  return [{ item: 'panel screws', count: each * plan.boxes, note }]
}

/** Screws for the whole set, from the holes of one box. Common practice, no source, where not geometry. */
export function screwRows(request: CutListRequest, plan: BoxPlan, holes: readonly Hole[]): Hardware[] {
  const counted = (item: string, kind: Hole['kind'], note: string): Hardware[] => {
    const count = holes.filter((hole) => hole.kind === kind).length
    return count === 0 ? [] : [{ item, count: count * plan.boxes, note }]
  }
  return [
    ...panelScrews(request, plan),
    ...counted('driver screws', 'bolt', 'Drive by hand: the pilot strips easily.'),
    ...counted(
      'machine screws with spacers and nuts',
      'mounting',
      `Through ${mm(plan.carcass.thicknessMm)} of panel, spacer, circuit board and nut.`,
    ),
  ]
}
