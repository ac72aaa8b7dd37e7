import { mm } from '../say.ts'
import type { ShopFacts } from '../shop/shop-facts.ts'
import type { Rule } from './rule.ts'

const atLeast = (value: number): string => mm(Math.ceil(value * 10 - 1e-6) / 10)

/** Rules about braces, and about what goes on the back. */
export const fittingRules: readonly Rule<ShopFacts>[] = [
  {
    code: 'brace-hits-body',
    severity: 'blocker',
    at: ({ braceClash }) => braceClash?.at ?? '/box/braces',
    unit: 'mm',
    when: ({ braceClash }) => braceClash !== null,
    value: ({ braceClash }) => braceClash?.shortMm ?? 0,
    limit: () => 0,
    message: ({ braceClash }) =>
      `The ${braceClash?.brace} and ${braceClash?.body} want the same room: ${mm(braceClash?.shortMm ?? 0)} are missing.`,
    remedies: ({ braceClash }) => [
      `Move the brace by ${atLeast(braceClash?.shortMm ?? 0)}, away from ${braceClash?.body}.`,
      'Notch the brace around the body and glue a block beside it instead.',
    ],
  },
  {
    code: 'divider-parts-the-air',
    severity: 'warning',
    at: ({ divider }) => divider ?? '/box/braces',
    when: ({ divider }) => divider !== null,
    message: () =>
      'A divider without a window makes two boxes of one: tuning and volume are reckoned here as one.',
    remedies: () => [
      'Cut a window of half its area; it holds the walls as well.',
      'Ask for each chamber by itself, as a box of its own.',
    ],
  },
  {
    code: 'back-holes-do-not-fit',
    severity: 'blocker',
    at: '/box/fittings',
    unit: 'mm',
    when: ({ backShortMm }) => backShortMm > 0,
    value: ({ backShortMm }) => backShortMm,
    limit: () => 0,
    message: ({ backShortMm }) =>
      `What goes on the back does not fit between the walls with the wood it needs: ${mm(backShortMm)} are missing.`,
    remedies: () => [
      'Put two of them side by side: give xMm and yMm.',
      'Move one to the front, or make the box larger.',
    ],
  },
  {
    code: 'back-web-thin',
    severity: 'warning',
    at: '/box/fittings',
    unit: 'mm',
    when: ({ backWeb, leastWebMm }) => backWeb !== null && backWeb.webMm < leastWebMm,
    value: ({ backWeb }) => backWeb?.webMm ?? 0,
    limit: ({ leastWebMm }) => leastWebMm,
    message: ({ backWeb, leastWebMm }) =>
      `On the back ${mm(backWeb?.webMm ?? 0)} of wood stay between ${backWeb?.between.join(' and ')}; ${mm(leastWebMm)} are wanted.`,
    remedies: () => ['Move them apart.', 'Use a smaller cut-out.'],
  },
  {
    code: 'fitting-hits-driver',
    severity: 'blocker',
    at: ({ fittingClash }) => fittingClash?.at ?? '/box/fittings',
    unit: 'mm',
    when: ({ fittingClash }) => fittingClash !== null,
    value: ({ fittingClash }) => fittingClash?.shortMm ?? 0,
    limit: () => 0,
    message: ({ fittingClash }) =>
      `${fittingClash?.fitting} on the back and ${fittingClash?.body} on the front want the same room: ${mm(fittingClash?.shortMm ?? 0)} are missing in depth.`,
    remedies: ({ fittingClash }) => [
      `Move ${fittingClash?.fitting} sideways, clear of ${fittingClash?.body}: give xMm and yMm.`,
      `Make the box ${atLeast(fittingClash?.shortMm ?? 0)} deeper.`,
    ],
  },
  {
    code: 'glue-on-laminate',
    severity: 'warning',
    at: ({ laminate }) => laminate ?? '/stock',
    when: ({ laminate }) => laminate !== null,
    message: () => 'White glue does not hold on the printed face of laminate.',
    remedies: () => [
      'Glue core to core: scrape the face off where another panel meets it.',
      'Use contact, polyurethane or hot-melt glue there.',
    ],
    caution:
      'Contact and polyurethane glue: air the room, gloves on, no flame; hot-melt burns deeply. Follow the label.',
  },
]
