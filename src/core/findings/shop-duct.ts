import { mm } from '../say.ts'
import type { Duct } from '../shop/duct.ts'
import type { ShopFacts } from '../shop/shop-facts.ts'
import type { Rule } from './rule.ts'

/** Where the boards of a duct go. */
function howItSits(duct: Duct): string {
  const shelves = duct.onFloor
    ? `the floor of the box below and a shelf ${mm(duct.heightMm)} above it`
    : `two shelves ${mm(duct.heightMm)} apart, level with the edges of the slot`
  const sides =
    duct.cheeksEach > 0
      ? `between two cheeks${duct.onFloor ? ' that stand on the floor' : ''}`
      : 'from one side wall to the other'
  return `${shelves}, ${sides}, all glued end-on to the back of the front and ${mm(duct.lengthMm)} long`
}

const cheekFits = (duct: Duct, thicknessMm: number): boolean =>
  duct.besideMm === null || duct.besideMm >= thicknessMm

/** Rules about slots whose duct is made of board. */
export const ductRules: readonly Rule<ShopFacts>[] = [
  {
    code: 'slot-duct-of-board',
    severity: 'note',
    at: '/port/slot',
    unit: 'mm',
    when: ({ duct }) => duct !== null,
    value: ({ duct }) => duct?.lengthMm ?? 0,
    message: ({ duct }) => (duct === null ? '' : `The duct of the slot: ${howItSits(duct)}.`),
    remedies: () => ['Glue it in and seal its corners before the box is closed.'],
  },
  {
    code: 'no-room-for-cheeks',
    severity: 'warning',
    at: '/port/slot/widthMm',
    unit: 'mm',
    when: ({ duct, thicknessMm }) => duct !== null && !cheekFits(duct, thicknessMm),
    value: ({ duct }) => duct?.besideMm ?? 0,
    limit: ({ thicknessMm }) => thicknessMm,
    message: ({ duct, thicknessMm }) =>
      `Between slot and side wall stay ${mm(duct?.besideMm ?? 0)}: no cheek of ${mm(thicknessMm)} goes there, so the panels hold none.`,
    remedies: ({ duct, thicknessMm }) => [
      `Make the slot ${mm(2 * (duct?.besideMm ?? 0))} wider, from wall to wall, and tune it anew.`,
      `Make the slot at least ${mm(2 * (thicknessMm - (duct?.besideMm ?? 0)))} narrower.`,
      `Fill both gaps over the length of the duct with strips of ${mm(duct?.besideMm ?? 0)}.`,
    ],
  },
]
