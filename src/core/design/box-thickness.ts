import type { Box } from '../../schema/box.ts'
import type { Stock } from '../../schema/shop.ts'
import { stockThickness } from '../shop/box-plan.ts'

/** The box with the thickness that all boards on hand share, when it names none; the cut list says so. */
export function withThickness(box: Box, stock: readonly Stock[] | undefined): Box {
  const thicknessMm = box.panelThicknessMm ?? stockThickness([...(stock ?? [])])
  return thicknessMm === undefined ? box : { ...box, panelThicknessMm: thicknessMm }
}
