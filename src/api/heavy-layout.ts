import type { Box } from '../schema/box.ts'
import type { Part, Stock } from '../schema/shop.ts'

/** More pieces than a speaker has take tens of milliseconds even without effort, and so do many kinds of board. */
const MANY_PIECES = 60
const MANY_TRIALS = 600
const PANELS_OF_A_BOX = 6

interface Layout {
  parts?: readonly Part[]
  box?: Box
  boxes?: number
  stock?: readonly Stock[]
}

/** Whether laying these pieces on these boards would keep other requests waiting; a guess, from counts alone. */
export function isHeavyLayout({ parts = [], box, boxes = 1, stock = [] }: Layout): boolean {
  const ofBoxes = box === undefined ? 0 : boxes * (PANELS_OF_A_BOX + (box.braces ?? []).length)
  const pieces = parts.reduce((sum, { count = 1 }) => sum + count, ofBoxes)
  return stock.length > 0 && (pieces > MANY_PIECES || pieces * stock.length > MANY_TRIALS)
}
