import { mm } from '../say.ts'
import { KNIFE_CAUTION } from '../shop/cautions.ts'
import { EDGE_SCREW_CORNER_MM } from '../shop/screws.ts'
import type { ShopFacts } from '../shop/shop-facts.ts'
import type { Rule } from './rule.ts'

/** Spare a strip should have over the board, both sides together, mm. Common practice, no source. */
const STRIP_SPARE_MM = 1
/** Thinnest board whose edge takes a screw, mm. Common practice, no source. */
const EDGE_SCREW_BOARD_MM = 12

/** Rules about joints and edges. */
export const joineryRules: readonly Rule<ShopFacts>[] = [
  {
    code: 'edge-screw-too-thick',
    severity: 'warning',
    at: '/workshop/screws/panel',
    unit: 'mm',
    when: ({ panelScrew, thicknessMm }) =>
      panelScrew !== null &&
      (panelScrew.diameterMm > panelScrew.thickestMm || thicknessMm < EDGE_SCREW_BOARD_MM),
    value: ({ panelScrew }) => panelScrew?.diameterMm ?? 0,
    limit: ({ panelScrew }) => panelScrew?.thickestMm ?? 0,
    message: ({ panelScrew, thicknessMm }) =>
      `Screws of ${mm(panelScrew?.diameterMm ?? 0)} split the edge of a board of ${mm(thicknessMm)}; a quarter of the board, from ${mm(EDGE_SCREW_BOARD_MM)} on, is the most.`,
    remedies: () => [
      'Glue the joints, with a batten in each corner.',
      'Use thinner screws or thicker board.',
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
    message: ({ panelScrew }) =>
      `Panel screws of ${mm(panelScrew?.lengthMm ?? 0)} hold little in an edge; ${mm(panelScrew?.wantedMm ?? 0)} reach six diameters deep.`,
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
    when: ({ stripMm, thicknessMm }) => stripMm !== null && stripMm < thicknessMm,
    value: ({ stripMm }) => stripMm ?? 0,
    limit: ({ thicknessMm }) => thicknessMm,
    message: ({ stripMm, thicknessMm }) =>
      `The band is ${mm(stripMm ?? 0)} wide after slitting and does not cover an edge of ${mm(thicknessMm)}.`,
    remedies: () => ['Slit the strip into fewer bands.', 'Buy a wider strip.'],
    caution: KNIFE_CAUTION,
  },
  {
    code: 'edging-without-spare',
    severity: 'note',
    at: '/workshop/edging',
    unit: 'mm',
    when: ({ stripMm, thicknessMm }) =>
      stripMm !== null && stripMm >= thicknessMm && stripMm < thicknessMm + STRIP_SPARE_MM,
    value: ({ stripMm }) => stripMm ?? 0,
    limit: ({ thicknessMm }) => thicknessMm + STRIP_SPARE_MM,
    message: ({ stripMm, thicknessMm }) =>
      `A band of ${mm(stripMm ?? 0)} on an edge of ${mm(thicknessMm)} leaves no room for a crooked slit.`,
    remedies: () => ['Slit along a steel rule in several light strokes.', 'Buy a wider strip.'],
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
