import { mm } from '../say.ts'
import { mmApart } from '../say-apart.ts'
import { KNIFE_CAUTION } from '../shop/cautions.ts'
import { EDGE_SCREW_CORNER_MM } from '../shop/screws.ts'
import type { ShopFacts } from '../shop/shop-facts.ts'
import type { Rule } from './rule.ts'

/** Spare a strip should have over the board, both sides together, mm. Common practice, no source. */
const STRIP_SPARE_MM = 1
/** Thinnest board whose edge takes a screw, mm. Common practice, no source. */
const EDGE_SCREW_BOARD_MM = 12

/** How to get bands that cover the edge: fewer from the strip on hand, when one or more are wide enough, or a new one. */
function forWiderBands({ strip, thicknessMm }: ShopFacts): string[] {
  const bands = strip === null ? 0 : Math.floor(strip.boughtMm / thicknessMm)
  const buy = `Buy a strip of ${mm(thicknessMm + STRIP_SPARE_MM)} or more.`
  if (strip === null || bands < 1) return [buy]
  const fewer =
    bands === 1
      ? `Do not slit the strip: whole, it covers the edge with ${mm(strip.boughtMm)}.`
      : `Slit the strip into ${bands} bands only, ${mm(strip.boughtMm / bands)} each.`
  return [fewer, buy]
}

/** Rules about joints and edges. */
export const joineryRules: readonly Rule<ShopFacts>[] = [
  {
    code: 'edge-screw-too-thick',
    severity: 'warning',
    at: '/workshop/screws/panel',
    unit: 'mm',
    when: ({ panelScrew, thicknessMm }) =>
      panelScrew !== null &&
      panelScrew.diameterMm > panelScrew.thickestMm &&
      thicknessMm >= EDGE_SCREW_BOARD_MM,
    value: ({ panelScrew }) => panelScrew?.diameterMm ?? 0,
    limit: ({ panelScrew }) => panelScrew?.thickestMm ?? 0,
    message: ({ panelScrew, thicknessMm }) => {
      const [screw, thickest] = mmApart(panelScrew?.diameterMm ?? 0, panelScrew?.thickestMm ?? 0)
      return `Screws of ${screw} split the edge of a board of ${mm(thicknessMm)}; a quarter of the board, ${thickest}, is the most.`
    },
    remedies: () => [
      'Glue the joints, with a batten in each corner.',
      'Use thinner screws or thicker board.',
    ],
  },
  {
    code: 'edge-screws-in-thin-board',
    severity: 'warning',
    at: '/workshop/screws/panel',
    unit: 'mm',
    when: ({ panelScrew, thicknessMm }) => panelScrew !== null && thicknessMm < EDGE_SCREW_BOARD_MM,
    value: ({ thicknessMm }) => thicknessMm,
    limit: () => EDGE_SCREW_BOARD_MM,
    message: ({ thicknessMm }) => {
      const [board, least] = mmApart(thicknessMm, EDGE_SCREW_BOARD_MM)
      return `The edge of a board of ${board} splits round any screw; it takes ${least} or more.`
    },
    remedies: () => [
      'Glue the joints, with a batten in each corner to screw into from inside.',
      `Use board of ${mm(EDGE_SCREW_BOARD_MM)} or more.`,
    ],
  },
  {
    code: 'joint-screw-short',
    severity: 'warning',
    at: '/workshop/screws/panel',
    unit: 'mm',
    when: ({ panelScrew }) => panelScrew !== null && panelScrew.lengthMm < panelScrew.wantedMm,
    value: ({ panelScrew }) => panelScrew?.lengthMm ?? 0,
    limit: ({ panelScrew }) => panelScrew?.wantedMm ?? 0,
    message: ({ panelScrew }) => {
      const [screw, wanted] = mmApart(panelScrew?.lengthMm ?? 0, panelScrew?.wantedMm ?? 0)
      return `Panel screws of ${screw} hold little in an edge; ${wanted} reach six diameters deep.`
    },
    remedies: ({ panelScrew }) => [
      `Use screws of about ${mm(panelScrew?.wantedMm ?? 0)}.`,
      'Let the glue do the work and clamp.',
    ],
  },
  {
    code: 'edges-glued-only',
    severity: 'note',
    at: '/workshop/screws/panel',
    unit: 'mm',
    when: ({ unscrewed }) => unscrewed !== null && unscrewed.edges > 0,
    value: ({ unscrewed }) => unscrewed?.shortestMm ?? 0,
    limit: () => 2 * EDGE_SCREW_CORNER_MM,
    message: ({ unscrewed }) =>
      `${unscrewed?.edges} of the ${unscrewed?.of} joints of a box are too short for edge screws ${mm(EDGE_SCREW_CORNER_MM)} from each corner; they are glued only.`,
    remedies: () => ['Glue and clamp them; a batten in the corner helps.'],
  },
  {
    code: 'edging-too-narrow',
    severity: 'blocker',
    at: '/workshop/edging',
    unit: 'mm',
    when: ({ strip, thicknessMm }) => strip !== null && strip.eachMm < thicknessMm,
    value: ({ strip }) => strip?.eachMm ?? 0,
    limit: ({ thicknessMm }) => thicknessMm,
    message: ({ strip, thicknessMm }) => {
      const [band, edge] = mmApart(strip?.eachMm ?? 0, thicknessMm)
      return `The band is ${band} wide${(strip?.slitsInto ?? 1) > 1 ? ' after slitting' : ''} and does not cover an edge of ${edge}.`
    },
    remedies: forWiderBands,
    caution: KNIFE_CAUTION,
  },
  {
    code: 'edging-without-spare',
    severity: 'note',
    at: '/workshop/edging',
    unit: 'mm',
    when: ({ strip, thicknessMm }) =>
      strip !== null && strip.eachMm >= thicknessMm && strip.eachMm < thicknessMm + STRIP_SPARE_MM,
    value: ({ strip }) => strip?.eachMm ?? 0,
    limit: ({ thicknessMm }) => thicknessMm + STRIP_SPARE_MM,
    message: ({ strip, thicknessMm }) =>
      `A band of ${mm(strip?.eachMm ?? 0)} on an edge of ${mm(thicknessMm)} leaves no room for ${(strip?.slitsInto ?? 1) > 1 ? 'a crooked slit' : 'laying it askew'}.`,
    remedies: ({ strip }) => [
      (strip?.slitsInto ?? 1) > 1
        ? 'Slit along a steel rule in several light strokes.'
        : 'Tack the band at both ends and in the middle before ironing it on.',
      'Buy a wider strip.',
    ],
    caution: KNIFE_CAUTION,
  },
  {
    code: 'mitres-need-a-true-saw',
    severity: 'note',
    at: '/box/joint',
    when: ({ joint }) => joint === 'mitre',
    message: () => 'Half a degree in each of eight mitres leaves the last corner four degrees open.',
    remedies: () => ['Set the saw on scrap until four test corners close.', 'Use butt joints: they forgive.'],
  },
]
