import type { Panel } from '../../schema/panel.ts'
import { type SlotBoards, slotBoards } from '../box/bodies.ts'
import type { BoxPlan } from './box-plan.ts'
import { tubeInsideMm } from './inside-fit.ts'
import { boardMassKg, densityKgPerM3 } from './mass.ts'

/** The boards that make a slot a duct, behind one front. */
export interface Duct extends SlotBoards {
  slots: number
  /** true when the floor of the box is one side of the duct. */
  onFloor: boolean
  widthMm: number
  heightMm: number
  lengthMm: number
}

/** Length of the boards behind the front, mm; null for a round port, or when the front alone is long enough. */
export function ductLengthMm({ port, portLengthMm, carcass }: BoxPlan): number | null {
  if (port?.slot === undefined || portLengthMm === null) return null
  const lengthMm = tubeInsideMm(portLengthMm, carcass.thicknessMm)
  return lengthMm > 0 ? lengthMm : null
}

/** The boards that make the slot of a plan a duct; null without a slot, or when it needs none. */
export function ductOf(plan: BoxPlan): Duct | null {
  const lengthMm = ductLengthMm(plan)
  const slot = plan.port?.slot
  if (lengthMm === null || slot === undefined) return null
  return {
    slots: plan.port?.count ?? 1,
    onFloor: slot.onWall === true,
    widthMm: slot.widthMm,
    heightMm: slot.heightMm,
    lengthMm,
    ...slotBoards(slot, plan.carcass.thicknessMm, plan.inner.widthMm),
  }
}

/** Panels of the ducts of the whole set. */
export function ductPanels(duct: Duct, plan: BoxPlan): Panel[] {
  const { thicknessMm } = plan.carcass
  const panel = (id: string, each: number, widthMm: number): Panel => ({
    id,
    count: each * duct.slots * plan.boxes,
    lengthMm: duct.lengthMm,
    widthMm,
    thicknessMm,
    sawLengthMm: duct.lengthMm,
    sawWidthMm: widthMm,
    grain: 'any',
    holes: [],
    bandedEdges: [],
    resonance: null,
    stands: null,
    massKg: boardMassKg(duct.lengthMm * widthMm * 1e-6, thicknessMm, densityKgPerM3(plan.material)),
  })
  const shelf = panel('port shelf', duct.shelvesEach, duct.widthMm)
  return duct.cheeksEach === 0 ? [shelf] : [shelf, panel('port cheek', duct.cheeksEach, duct.cheekHeightMm)]
}

/** Length of the glued edges of the ducts of one box, mm: shelves at front and sides, cheeks at front and floor. Geometry. */
export function ductEdgesMm(duct: Duct): number {
  const shelf = duct.widthMm + 2 * duct.lengthMm
  const cheek = duct.cheekHeightMm + (duct.onFloor ? duct.lengthMm : 0)
  return duct.slots * (duct.shelvesEach * shelf + duct.cheeksEach * cheek)
}
