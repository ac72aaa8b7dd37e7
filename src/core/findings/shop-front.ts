import { mm } from '../say.ts'
import { mmApart } from '../say-apart.ts'
import { DRILL_CAUTION } from '../shop/cautions.ts'
import type { ShopFacts } from '../shop/shop-facts.ts'
import type { Rule } from './rule.ts'
import { BREAKING_WEB_MM, woodLeft } from './wood-left.ts'

/** Millimetres rounded up to a tenth: whoever follows the advice then has enough. */
const atLeast = (value: number): string => mm(Math.ceil(value * 10 - 1e-6) / 10)

const moveApart = ([one, other]: [string, string]): string =>
  other === 'edge' ? `Move ${one} inwards.` : `Move ${one} and ${other} apart.`

/** What leaves more wood between the holes, as far as each would help. */
function forMoreWood({ column, web }: ShopFacts): string[] {
  const { shortMm, acrossShortMm, smallRow, upright } = column
  // Then it is not the room that lacks: somebody placed a hole there.
  if (shortMm === 0 && acrossShortMm === 0 && web !== null)
    return [moveApart(web.between), 'Leave their places out: then they are found here.']
  return [
    ...(shortMm > 0 ? [`Make the front ${atLeast(shortMm)} longer.`] : []),
    ...(acrossShortMm > 0
      ? [`Make the front ${atLeast(acrossShortMm)} ${upright ? 'wider' : 'higher'}.`]
      : []),
    ...(smallRow && shortMm > 0 ? ['Move the control and the indicator to the back of the box.'] : []),
    'Use a smaller driver or port, or lead the port through another panel.',
  ]
}

const names = (all: readonly string[]): string => all.join(', ')

/** Rules about the holes in the front. */
export const frontRules: readonly Rule<ShopFacts>[] = [
  {
    code: 'holes-longer-than-front',
    severity: 'blocker',
    at: '/box',
    unit: 'mm',
    when: ({ column }) => column.overlapMm > 0,
    value: ({ column }) => column.overlapMm,
    limit: () => 0,
    message: ({ column }) =>
      `The holes do not fit between the walls: the column is ${mm(column.overlapMm)} too long without any wood between them, ${mm(column.shortMm)} with the webs it needs.`,
    remedies: forMoreWood,
  },
  {
    code: 'hole-wider-than-opening',
    severity: 'blocker',
    at: '/box',
    unit: 'mm',
    when: ({ column }) => column.acrossMm > 0,
    value: ({ column }) => column.acrossMm,
    limit: () => 0,
    message: ({ column }) =>
      `The widest hole exceeds the opening between the walls by ${mm(column.acrossMm)}: it would run into the boards behind the front.`,
    remedies: ({ column }) => [
      `Make the box ${atLeast(column.acrossMm)} ${column.upright ? 'wider' : 'higher'} or use thinner board.`,
      'Use a smaller driver or port.',
    ],
  },
  {
    code: 'web-breaks',
    severity: 'blocker',
    at: '/box',
    unit: 'mm',
    when: ({ web }) => web !== null && web.webMm < BREAKING_WEB_MM,
    value: ({ web }) => web?.webMm ?? 0,
    limit: () => BREAKING_WEB_MM,
    message: ({ web }) => (web === null ? '' : woodLeft(web)),
    remedies: forMoreWood,
    caution: DRILL_CAUTION,
  },
  {
    code: 'web-thin',
    severity: 'warning',
    at: '/box',
    unit: 'mm',
    when: ({ web, leastWebMm }) => web !== null && web.webMm >= BREAKING_WEB_MM && web.webMm < leastWebMm,
    value: ({ web }) => web?.webMm ?? 0,
    limit: ({ leastWebMm }) => leastWebMm,
    message: ({ web, leastWebMm }) => {
      const [wood, least] = mmApart(web?.webMm ?? 0, leastWebMm)
      return `${wood} of wood stay between ${web?.between.join(' and ')}; ${least} are wanted.`
    },
    remedies: forMoreWood,
  },
  {
    code: 'flanges-overlap',
    severity: 'blocker',
    at: '/drivers',
    unit: 'mm',
    when: ({ flange }) => flange !== null && flange.gapMm < 0,
    value: ({ flange }) => flange?.gapMm ?? 0,
    limit: () => 0,
    message: ({ flange }) =>
      `The flanges of ${flange?.between.join(' and ')} meet: they overlap by ${mm(-(flange?.gapMm ?? 0))}.`,
    remedies: () => ['Make the front larger.', 'Use drivers with a smaller flange.'],
  },
  {
    code: 'driver-not-measured',
    severity: 'warning',
    at: '/drivers',
    when: ({ unmeasured }) => unmeasured.length > 0,
    message: ({ unmeasured }) =>
      `No frame is given for ${names(unmeasured)}: no hole is drawn and no fit is checked.`,
    remedies: () => ['Measure flange, cut-out, bolt circle and depth and give them as frame.'],
  },
  {
    code: 'radiator-not-measured',
    severity: 'warning',
    at: '/passiveRadiator',
    when: ({ radiator }) => radiator,
    message: () => 'The passive radiator has no frame in the request: no hole is drawn for it.',
    remedies: () => ['Mark its hole from the radiator itself and cut it after the others.'],
  },
]
