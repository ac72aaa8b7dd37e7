import { asBuilt as comparedWithPlan } from '../core/as-built/as-built.ts'
import { cutListInBox } from '../core/design/cut-list-in-box.ts'
import { designCheck as checkedDesign } from '../core/design/design-check.ts'
import { driverMeasurement as measuredDrivers } from '../core/measurement/driver-measurement.ts'
import type { Printing } from '../views/drawing/printed.ts'
import { printedSheet } from '../views/sheet/printed-sheet.ts'

/** What a worker thread of the pool runs: an export for each member of `HeavyWork`. */
export const cutList = cutListInBox
export const designCheck = checkedDesign
export const buildSheetPdf = printedSheet
export const driverMeasurement = measuredDrivers
export const asBuilt = comparedWithPlan

/** What writes PDF takes half of the start of a thread, and most work needs none. */
export async function cutListPdf(printing: Printing): Promise<Uint8Array | null> {
  const { printed } = await import('../views/drawing/printed.ts')
  return printed(printing)
}
