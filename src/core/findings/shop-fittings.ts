import { mm } from '../say.ts'
import { mmApart } from '../say-apart.ts'
import type { Homeless } from '../shop/back.ts'
import type { BraceClash } from '../shop/brace-clashes.ts'
import { DRILL_CAUTION } from '../shop/cautions.ts'
import type { ShopFacts } from '../shop/shop-facts.ts'
import type { Rule } from './rule.ts'
import { BREAKING_WEB_MM, woodLeft } from './wood-left.ts'

const atLeast = (value: number): string => mm(Math.ceil(value * 10 - 1e-6) / 10)

/** Least board that a bush and its nut should hold, mm. Common practice, no source. */
const LEAST_AT_CONTROL_MM = 2
/** Shaft that a knob grips, mm. Common practice, no source. */
const LEAST_FOR_KNOB_MM = 8

/** A brace and one thing that it meets. */
export const braceClashRules: readonly Rule<BraceClash>[] = [
  {
    code: 'brace-hits-body',
    severity: 'blocker',
    at: ({ at }) => at,
    unit: 'mm',
    when: ({ shortMm }) => shortMm > 0,
    value: ({ shortMm }) => shortMm,
    limit: () => 0,
    message: ({ brace, body, shortMm }) =>
      `The ${brace} and ${body} want the same room: ${mm(shortMm)} are missing.`,
    remedies: ({ body, shortMm }) => [
      `Move the brace by ${atLeast(shortMm)}, away from ${body}.`,
      'Notch the brace around the body and glue a block beside it instead.',
    ],
  },
]

/** Something that found no place on the back. */
export const homelessRules: readonly Rule<Homeless>[] = [
  {
    code: 'back-holes-do-not-fit',
    severity: 'blocker',
    at: ({ at }) => at,
    unit: 'mm',
    when: ({ shortMm }) => shortMm > 0,
    value: ({ shortMm }) => shortMm,
    limit: () => 0,
    message: ({ id, along, shortMm }) =>
      along === 'width'
        ? `${id} is ${mm(shortMm)} wider than the room between the walls, so it has no place on the back.`
        : `${id} finds no place on the back with the wood it needs: ${mm(shortMm)} of height are missing.`,
    remedies: ({ at, along, growMm }) => [
      ...(along === 'height' ? ['Ask for less wood between holes by leastWebMm of the workshop.'] : []),
      ...(at.startsWith('/box/fittings')
        ? ['Put it on the front: panel, xMm and yMm.']
        : ['Use a smaller one.']),
      `Make the box ${atLeast(growMm)} ${along === 'width' ? 'wider' : 'higher'}.`,
    ],
  },
]

/** Rules about braces, fittings, holes where the maker wants them, and the control. */
export const fittingRules: readonly Rule<ShopFacts>[] = [
  {
    code: 'brace-outside-box',
    severity: 'blocker',
    at: ({ braceOutside }) => braceOutside?.at ?? '/box/braces',
    unit: 'mm',
    when: ({ braceOutside }) => braceOutside !== null,
    value: ({ braceOutside }) => braceOutside?.overMm ?? 0,
    limit: () => 0,
    message: ({ braceOutside }) =>
      `The ${braceOutside?.id} does not stand between the walls, which are ${mm(braceOutside?.sideMm ?? 0)} apart inside: it reaches ${mm(braceOutside?.overMm ?? 0)} into one or past it.`,
    remedies: ({ braceOutside }) => [
      `Move it inwards by ${atLeast(braceOutside?.overMm ?? 0)} or more.`,
      'Leave atMm out: then a place is found here.',
    ],
  },
  {
    code: 'braces-cross',
    severity: 'note',
    at: ({ braceCross }) => braceCross?.at ?? '/box/braces',
    when: ({ braceCross }) => braceCross !== null,
    message: ({ braceCross }) =>
      `${braceCross?.ids.join(' and ')} cross: slot each to its half where they meet. The air in both is taken off twice there.`,
    remedies: () => ['Cut the slots as wide as the board and half as deep as the braces, then glue.'],
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
    code: 'back-web-breaks',
    severity: 'blocker',
    at: ({ backWeb }) => backWeb?.at ?? '/box',
    unit: 'mm',
    when: ({ backWeb }) => backWeb !== null && backWeb.webMm < BREAKING_WEB_MM,
    value: ({ backWeb }) => backWeb?.webMm ?? 0,
    limit: () => BREAKING_WEB_MM,
    message: ({ backWeb }) => (backWeb === null ? '' : `On the back: ${woodLeft(backWeb)}`),
    remedies: ({ backWeb }) => [
      'Say where each goes: xMm and yMm of a fitting, a row in the holes of the box for the cable or a radiator.',
      backWeb?.between[1] === 'edge' ? `Move ${backWeb.between[0]} inwards.` : 'Use a smaller cut-out.',
    ],
    caution: DRILL_CAUTION,
  },
  {
    code: 'back-web-thin',
    severity: 'warning',
    at: ({ backWeb }) => backWeb?.at ?? '/box',
    unit: 'mm',
    when: ({ backWeb, leastWebMm }) =>
      backWeb !== null && backWeb.webMm >= BREAKING_WEB_MM && backWeb.webMm < leastWebMm,
    value: ({ backWeb }) => backWeb?.webMm ?? 0,
    limit: ({ leastWebMm }) => leastWebMm,
    message: ({ backWeb, leastWebMm }) => {
      const [wood, least] = mmApart(backWeb?.webMm ?? 0, leastWebMm)
      return `On the back ${wood} of wood stay between ${backWeb?.between.join(' and ')}; ${least} are wanted.`
    },
    remedies: () => ['Move them apart.', 'Use a smaller cut-out.'],
  },
  {
    code: 'meets-in-depth',
    severity: 'blocker',
    at: ({ depthClash }) => depthClash?.at ?? '/box/fittings',
    unit: 'mm',
    when: ({ depthClash }) => depthClash !== null,
    value: ({ depthClash }) => depthClash?.shortMm ?? 0,
    limit: () => 0,
    message: ({ depthClash }) =>
      `${depthClash?.between.join(' and ')} want the same room: ${mm(depthClash?.shortMm ?? 0)} are missing in depth.`,
    remedies: ({ depthClash }) => [
      'Move one of them sideways, clear of the other.',
      `Make the box ${atLeast(depthClash?.shortMm ?? 0)} deeper.`,
    ],
  },
  {
    code: 'hole-over-wall',
    severity: 'blocker',
    at: ({ overWall }) => overWall?.at ?? '/box',
    unit: 'mm',
    when: ({ overWall }) => overWall !== null,
    value: ({ overWall }) => overWall?.overMm ?? 0,
    limit: () => 0,
    message: ({ overWall }) =>
      `${overWall?.id} reaches ${mm(overWall?.overMm ?? 0)} over the wall behind it, or beyond the panel.`,
    remedies: ({ overWall }) => [`Move it inwards by ${atLeast(overWall?.overMm ?? 0)} or more.`],
  },
  {
    code: 'control-bush-short',
    severity: 'warning',
    at: '/signal/volumeControl/bushLengthMm',
    unit: 'mm',
    when: ({ control }) => control !== null && control.leaveMm < LEAST_AT_CONTROL_MM,
    value: ({ control }) => control?.leaveMm ?? 0,
    limit: () => LEAST_AT_CONTROL_MM,
    message: ({ control }) =>
      `A bush of ${mm(control?.bushMm ?? 0)} with its nut leaves only ${mm(control?.leaveMm ?? 0)} of board in the pocket of the control.`,
    remedies: () => [
      'Hold the control in a thin metal plate over a hole that its body passes.',
      'Use a control with a longer bush.',
    ],
    caution: DRILL_CAUTION,
  },
  {
    code: 'control-shaft-short',
    severity: 'warning',
    at: '/signal/volumeControl/shaftLengthMm',
    unit: 'mm',
    when: ({ control }) => control !== null && control.knobMm !== null && control.knobMm < LEAST_FOR_KNOB_MM,
    value: ({ control }) => control?.knobMm ?? 0,
    limit: () => LEAST_FOR_KNOB_MM,
    message: ({ control }) => {
      const [shaft, least] = mmApart(Math.max(0, control?.knobMm ?? 0), LEAST_FOR_KNOB_MM)
      return `The shaft of the control stands out ${shaft}; a knob grips on ${least}.`
    },
    remedies: ({ control }) => [
      `Use a shaft ${atLeast(LEAST_FOR_KNOB_MM - (control?.knobMm ?? 0))} longer, or an extension on it.`,
      'Hold the control in a thin metal plate over a hole that its body passes.',
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
