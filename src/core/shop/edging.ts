import type { CutListSections } from '../../schema/cut-list.ts'
import type { Panel } from '../../schema/panel.ts'
import type { Workshop } from '../../schema/shop.ts'
import type { Fault } from '../outcome.ts'
import { mm } from '../say.ts'
import type { Carcass, Role } from './joint-panels.ts'
import { frontCovers } from './joint-panels.ts'

export type Edge = Panel['bandedEdges'][number]
type Edging = NonNullable<Workshop['edging']>
export type EdgesWanted = NonNullable<Edging['edges']>

/** Left over at each end of a band before trimming, mm, when the request does not say. Common practice, no source. */
export const USUAL_OVERHANG_MM = 10
/** Strip bought beyond the bands themselves. Common practice, no source. */
const WASTE_SHARE = 0.05

const ALL: readonly Edge[] = ['left', 'right', 'bottom', 'top']

/** Edges of front and back that show the core: all of them, where they cover the edges of the others unmitred. */
function baffleEdges(carcass: Carcass, role: Role, wanted: EdgesWanted): Edge[] {
  const shows = carcass.joint === 'butt' && frontCovers(carcass)
  return shows && (role === 'front' || wanted !== 'front') ? [...ALL] : []
}

/** Edges of sides, top and bottom that show the core: towards the front and back, and the ends that run through. */
function shellEdges(carcass: Carcass, role: Role, wanted: EdgesWanted): Edge[] {
  if (frontCovers(carcass)) return []
  const through = carcass.runsThrough === 'sides' ? 'side' : 'top-bottom'
  const ends: Edge[] =
    wanted === 'all' && carcass.joint !== 'mitre' && role === through ? ['left', 'right'] : []
  return [...ends, 'bottom', ...(wanted === 'front' ? [] : (['top'] as const))]
}

/**
 * Edges of a panel that show the core of the board. On sides, top and bottom the edge called bottom faces the front
 * of the box, the one called top its back; left and right are the ends.
 */
export function bandedEdges(carcass: Carcass, role: Role, wanted: EdgesWanted): Edge[] {
  if (wanted === 'none') return []
  return role === 'front' || role === 'back'
    ? baffleEdges(carcass, role, wanted)
    : shellEdges(carcass, role, wanted)
}

/** Panels of which their bands leave nothing to saw, each told at the thickness of the band. Geometry. */
export const bandFaults = (panels: readonly Panel[]): Fault[] =>
  panels
    .filter(({ sawLengthMm, sawWidthMm }) => Math.min(sawLengthMm, sawWidthMm) <= 0)
    .map(({ id, lengthMm, widthMm }) => ({
      at: '/workshop/edging/thicknessMm',
      message: `leaves nothing to saw of ${id}, which is ${mm(lengthMm)} by ${mm(widthMm)} with its bands on`,
    }))

/** Length of one edge of a panel, mm. */
const edgeMm = (panel: Pick<Panel, 'lengthMm' | 'widthMm'>, edge: Edge): number =>
  edge === 'left' || edge === 'right' ? panel.widthMm : panel.lengthMm

/** Lengths of all edges to band in the whole set, mm. */
export const edgesToBandMm = (panels: readonly Panel[]): number[] =>
  panels.flatMap((panel) =>
    Array.from({ length: panel.count }, () => panel.bandedEdges.map((edge) => edgeMm(panel, edge))).flat(),
  )

/** Width of each strip after slitting, mm. */
export const stripEachMm = (edging: Edging): number => edging.widthMm / (edging.slitsInto ?? 1)

/** Bands and the strip to buy for edges of these lengths, mm. Geometry; waste common practice, no source. */
export function edgingPlan(
  edging: Edging,
  edgesMm: readonly number[],
): NonNullable<CutListSections['edging']> {
  const overhang = 2 * (edging.overhangMm ?? USUAL_OVERHANG_MM)
  const bandLengthMm = edgesMm.reduce((sum, edge) => sum + edge + overhang, 0)
  return {
    stripEachMm: stripEachMm(edging),
    bandLengthMm,
    stripToBuyMm: (bandLengthMm / (edging.slitsInto ?? 1)) * (1 + WASTE_SHARE),
    edges: edgesMm.length,
  }
}
