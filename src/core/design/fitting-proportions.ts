import type { Box } from '../../schema/box.ts'
import type { Design } from '../../schema/design.ts'
import { verdictOf } from '../findings/rule.ts'
import { isRefusal } from '../outcome.ts'
import { cutListOf } from './cut-list-of.ts'

type Proportions = NonNullable<Box['proportions']>

/** Shapes of small boxes, no two sides alike; the slim one holds two drivers above each other. Common practice, no source. */
const SHAPES: readonly Proportions[] = [
  { width: 1, height: 1.6, depth: 1.25 },
  { width: 1, height: 2, depth: 1.4 },
  { width: 1.25, height: 1.6, depth: 1 },
]

/**
 * Proportions at which what is planned goes on the front and into a box of which only the volume is known, and the
 * boards suffice; null when none of the usual ones does, or when the board is not known.
 * @param portReachMm  how deep the port goes, mm; null without one
 */
export function fittingProportions(design: Design, portReachMm: number | null): Proportions | null {
  return (
    SHAPES.find((proportions) => {
      const cut = cutListOf({ ...design, box: { ...design.box, proportions } }, portReachMm)
      return !isRefusal(cut) && verdictOf(cut.findings) !== 'blocked'
    }) ?? null
  )
}
