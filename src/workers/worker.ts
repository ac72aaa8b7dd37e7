import { cutListInBox } from '../core/design/cut-list-in-box.ts'
import { printed } from '../views/drawing/printed.ts'
import { printedSheet } from '../views/sheet/printed-sheet.ts'

/** What a worker thread of the pool runs: an export for each member of `HeavyWork`. */
export const cutList = cutListInBox
export const cutListPdf = printed
export const buildSheetPdf = printedSheet
