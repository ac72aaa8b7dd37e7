import type { Finding } from '../../schema/frame.ts'
import { significant } from '../say.ts'
import { STRIP_CAUTION } from '../shop/cautions.ts'
import type { BoardFacts, ShopFacts } from '../shop/shop-facts.ts'
import { apply, type Rule } from './rule.ts'
import { drillingRules } from './shop-drilling.ts'
import { ductRules } from './shop-duct.ts'
import { braceClashRules, fittingRules, homelessRules } from './shop-fittings.ts'
import { frontRules } from './shop-front.ts'
import { insideRules } from './shop-inside.ts'
import { joineryRules } from './shop-joinery.ts'

/** Every rule about a box as saw and drill see it. */
export const shopRules: readonly Rule<ShopFacts>[] = [
  ...frontRules,
  ...insideRules,
  ...fittingRules,
  ...ductRules,
  ...drillingRules,
  ...joineryRules,
]

/** What there is to say about a box: its own rules, and one finding for every clash and everything without a place. */
export const shopFindings = (facts: ShopFacts): Finding[] => [
  ...apply(shopRules, facts),
  ...facts.homeless.flatMap((homeless) => apply(homelessRules, homeless)),
  ...facts.braceClashes.flatMap((clash) => apply(braceClashRules, clash)),
]

/** Strips narrower than this are not pushed by hand, mm. Common practice, no source. */
const NARROW_STRIP_MM = 60

const names = (all: readonly string[]): string => all.join(', ')

/** Rules about what the boards on hand yield. */
export const boardRules: readonly Rule<BoardFacts>[] = [
  {
    code: 'no-board-of-thickness',
    severity: 'blocker',
    at: '/stock',
    when: ({ tooThick }) => tooThick.length > 0,
    message: ({ tooThick }) => `No board on hand has the thickness of ${names(tooThick)}.`,
    remedies: () => [
      'Find board of that thickness.',
      'Plan the box for the board on hand: its sides change with it.',
    ],
  },
  {
    code: 'part-larger-than-board',
    severity: 'blocker',
    at: '/stock',
    when: ({ tooLarge }) => tooLarge.length > 0,
    message: ({ tooLarge }) =>
      `No board on hand is large enough, after trimming and with the grain as asked, for ${names(tooLarge)}.`,
    remedies: () => [
      'Use a larger board.',
      'Trim less, or let the part be turned.',
      'Join two pieces edge to edge.',
    ],
  },
  {
    code: 'no-board-named',
    severity: 'warning',
    at: '/stock',
    unit: 'm2',
    when: ({ hasBoards }) => !hasBoards,
    value: ({ areaM2 }) => areaM2,
    limit: () => 0,
    message: ({ areaM2 }) =>
      `No board is named, so nothing is laid out; the panels alone need ${significant(areaM2, 2)} m2, waste not counted.`,
    remedies: () => ['Name the boards on hand with their sizes.'],
  },
  {
    code: 'boards-do-not-suffice',
    severity: 'blocker',
    at: '/stock',
    when: ({ leftOver, hasBoards }) => hasBoards && leftOver.pieces > 0,
    value: ({ leftOver }) => leftOver.pieces,
    limit: () => 0,
    message: ({ leftOver }) =>
      `The boards on hand do not yield everything: ${leftOver.pieces} ${leftOver.pieces === 1 ? 'piece finds' : 'pieces find'} no place (${names(leftOver.ids)}).`,
    remedies: ({ leftOver }) => [
      ...leftOver.boards,
      'Make the box smaller, use thinner board, or a joint that needs less wood.',
    ],
  },
  {
    code: 'narrow-strips',
    severity: 'note',
    at: '/stock',
    unit: 'mm',
    when: ({ narrowestMm }) => narrowestMm < NARROW_STRIP_MM,
    value: ({ narrowestMm }) => narrowestMm,
    limit: () => NARROW_STRIP_MM,
    message: ({ narrowestMm }) =>
      `A part is only ${Number(narrowestMm.toFixed(1))} mm wide: cut it with a push stick.`,
    remedies: () => ['Cut the narrow parts last, from the wider piece.'],
    caution: STRIP_CAUTION,
  },
]
