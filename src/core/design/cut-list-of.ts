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

/** The cut list of a design, its port at the length the acoustics found. */
export const cutListOf = (design: Design, portLengthMm: number | null): Outcome<CutListSections> | Refusal =>
  cutList(requestOf(design), { portLengthMm })
