import type { CutListRequest, CutListSections } from '../../schema/cut-list.ts'
import type { Design } from '../../schema/design.ts'
import type { Outcome, Refusal } from '../outcome.ts'
import { cutList } from '../shop/cut-list.ts'

function requestOf(design: Design): CutListRequest {
  const { box, boxes, drivers, port, passiveRadiator, signal, supply, workshop } = design
  return {
    box,
    drivers,
    supply,
    stock: design.stock ?? [],
    ...(boxes !== undefined && { boxes }),
    ...(port && { port }),
    ...(passiveRadiator && { passiveRadiator }),
    ...(signal && { signal }),
    ...(workshop && { workshop }),
  }
}

const NOTHING: CutListSections = {
  panels: [],
  sheets: [],
  notPlaced: [],
  bound: null,
  cuts: [],
  edging: null,
  hardware: [],
  usedAreaM2: 0,
  stockAreaM2: 0,
  largestOffcut: null,
}

/** Whether the sides of the box are known, so that panels can be drawn. */
export const hasSides = ({ box }: Design): boolean =>
  box.outer !== undefined || box.inner !== undefined || box.proportions !== undefined

/** The cut list of a design, its port at the length the acoustics found; empty where only a volume is known. */
export const cutListOf = (design: Design, portLengthMm: number | null): Outcome<CutListSections> | Refusal =>
  hasSides(design)
    ? cutList(requestOf(design), { portLengthMm })
    : { sections: NOTHING, findings: [], assumptions: [], cautions: [], working: [] }
