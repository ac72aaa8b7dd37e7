import type { CutListRequest, CutListSections } from '../../schema/cut-list.ts'
import type { Assumption, Finding } from '../../schema/frame.ts'
import type { Panel } from '../../schema/panel.ts'
import { apply, cautionsOf } from '../findings/rule.ts'
import { boardRules, shopFindings, shopRules } from '../findings/shop.ts'
import type { Fault, Outcome, Refusal } from '../outcome.ts'
import type { Formula } from '../working.ts'
import { backOf } from './back.ts'
import { boardFacts } from './board-facts.ts'
import { boardSections, type NamedPart, namedParts, namedStock } from './board-sections.ts'
import { frontBodies } from './bodies-inside.ts'
import { boxPanels, drilled, ringing } from './box-panels.ts'
import { boxFaults, boxPlan, materialOf } from './box-plan.ts'
import { braceAssumptions, bracePanels, placedBraces } from './braces.ts'
import { boxCautions, DUST_CAUTION, SAW_CAUTION } from './cautions.ts'
import { boxAssumptions, USUAL_KERF_MM, workshopAssumptions } from './cut-list-assumptions.ts'
import { boardFormulas, boxFormulas } from './cut-list-working.ts'
import { ductOf, ductPanels } from './duct.ts'
import { bandFaults, edgesToBandMm, edgingPlan } from './edging.ts'
import { workOf } from './effort.ts'
import { fittingFaults } from './fitting-faults.ts'
import { frameFaults, radiatorFrameFaults } from './frame-faults.ts'
import { leastWebMm } from './front-layout.ts'
import { shopFacts } from './gather-facts.ts'
import { hardwareOf } from './hardware.ts'
import { frontOf } from './holes.ts'
import { layout } from './layout/layout.ts'
import { boardMassKg, densityKgPerM3 } from './mass.ts'
import { nameFaults } from './name-faults.ts'

/** Pieces a request may ask for; more would keep others waiting. */
const MOST_PIECES = 2000

/** What only the caller knows. */
export interface Resolved {
  /** Length of the port that the wanted tuning asks for, mm; null without a port or when it cannot be told. */
  portLengthMm: number | null
}

/** What the box or the plain parts contribute, before the boards. */
interface Wanted {
  panels: Panel[]
  edging: CutListSections['edging']
  hardware: CutListSections['hardware']
  findings: Finding[]
  assumptions: Assumption[]
  cautions: string[]
  working: Formula[]
}

const pieces = (request: CutListRequest): number =>
  (request.parts ?? []).reduce((sum, part) => sum + (part.count ?? 1), 0)

function requestFaults(request: CutListRequest): Fault[] {
  const { box, parts } = request
  return [
    ...(box === undefined && parts === undefined
      ? [{ at: '/box', message: 'give a box, or plain parts' }]
      : []),
    ...(box !== undefined && parts !== undefined
      ? [{ at: '/parts', message: 'give a box or plain parts, not both' }]
      : []),
    ...(pieces(request) > MOST_PIECES
      ? [
          {
            at: '/parts',
            message: `${pieces(request)} pieces in all; at most ${MOST_PIECES} are laid out at once`,
          },
        ]
      : []),
    ...nameFaults(request),
    ...(box === undefined ? [] : boxFaults(box, request.stock)),
    ...frameFaults(request.drivers ?? []),
    ...radiatorFrameFaults(request.passiveRadiator),
    ...(box === undefined ? [] : fittingFaults(request, box)),
  ]
}

function wantedForBox(
  request: CutListRequest,
  box: NonNullable<CutListRequest['box']>,
  resolved: Resolved,
): Wanted {
  const plan = boxPlan(request, box, resolved.portLengthMm)
  const webMm = leastWebMm(request.workshop?.leastWebMm, plan.carcass.thicknessMm)
  const front = frontOf(request, plan, webMm)
  const duct = ductOf(plan)
  const carcass = boxPanels(request, plan)
  const { lengthMm, widthMm } = carcass.find(({ id }) => id === 'front') ?? { lengthMm: 0, widthMm: 0 }
  const back = backOf(request, plan, { lengthMm, widthMm }, webMm)
  const holes = new Map([
    ['front', front.holes],
    ['back', back.holes],
  ])
  const braces = placedBraces(
    plan,
    frontBodies(front, { lengthMm }, plan, ({ holeMm }) => holeMm),
  )
  const walls = carcass.map((panel) => ringing(drilled(panel, holes.get(panel.id) ?? [], plan), plan, braces))
  const panels = [...walls, ...bracePanels(plan, braces), ...(duct === null ? [] : ductPanels(duct, plan))]
  const facts = shopFacts(request, plan, front, panels, webMm, { braces, back })
  const strip = request.workshop?.edging
  const edgesMm = edgesToBandMm(panels)
  const edging = strip === undefined || edgesMm.length === 0 ? null : edgingPlan(strip, edgesMm)
  return {
    panels,
    edging,
    hardware: hardwareOf(request, plan, front, { back, braces }, edging),
    findings: shopFindings(facts),
    assumptions: [...plan.assumptions, ...boxAssumptions(request, plan, webMm), ...braceAssumptions(braces)],
    cautions: [...boxCautions(edging !== null, front.holes.length > 0), ...cautionsOf(shopRules, facts)],
    working: boxFormulas(plan, edgesMm, strip),
  }
}

function wantedForParts(parts: readonly NamedPart[], stock: CutListRequest['stock']): Wanted {
  const panels = parts.map(
    (part): Panel => ({
      id: part.id,
      count: part.count ?? 1,
      lengthMm: part.lengthMm,
      widthMm: part.widthMm,
      thicknessMm: part.thicknessMm ?? null,
      sawLengthMm: part.lengthMm,
      sawWidthMm: part.widthMm,
      grain: part.grain ?? 'any',
      holes: [],
      bandedEdges: [],
      resonance: null,
      stands: null,
      massKg:
        part.thicknessMm === undefined
          ? null
          : boardMassKg(
              part.lengthMm * part.widthMm * 1e-6,
              part.thicknessMm,
              densityKgPerM3(materialOf(stock, part.thicknessMm)),
            ),
    }),
  )
  return { panels, edging: null, hardware: [], findings: [], assumptions: [], cautions: [], working: [] }
}

/** What is sawn: a banded panel is sawn smaller by its bands. */
const partOf = ({ id, sawLengthMm, sawWidthMm, thicknessMm, count, grain }: Panel): NamedPart => ({
  id,
  lengthMm: sawLengthMm,
  widthMm: sawWidthMm,
  count,
  grain,
  ...(thicknessMm !== null && { thicknessMm }),
})

/**
 * The cut list of a box or of plain parts: panels with their holes, a layout on the boards on hand with cuts from
 * edge to edge only, the cuts in sawing order, edging and hardware.
 * @param resolved  the length of the port when only its tuning is given, mm
 */
export function cutList(request: CutListRequest, resolved: Resolved): Outcome<CutListSections> | Refusal {
  const faults = requestFaults(request)
  if (faults.length > 0) return { faults }
  const wanted =
    request.box === undefined
      ? wantedForParts(namedParts(request.parts ?? []), request.stock)
      : wantedForBox(request, request.box, resolved)
  const unsawn = bandFaults(wanted.panels)
  if (unsawn.length > 0) return { faults: unsawn }
  const parts = wanted.panels.map(partOf)
  const stock = namedStock(request.stock)
  const kerfMm = request.workshop?.kerfMm ?? USUAL_KERF_MM
  const work = workOf(request.effort?.seconds ?? 0)
  const boards = boardSections(layout(parts, stock, kerfMm, work), parts, stock, kerfMm)
  const facts = boardFacts(parts, stock, kerfMm, boards.notPlaced)
  return {
    sections: { panels: wanted.panels, ...boards, edging: wanted.edging, hardware: wanted.hardware },
    findings: [...wanted.findings, ...apply(boardRules, facts)],
    assumptions: [...wanted.assumptions, ...workshopAssumptions(request)],
    cautions: [...new Set([SAW_CAUTION, DUST_CAUTION, ...wanted.cautions, ...cautionsOf(boardRules, facts)])],
    working: [...wanted.working, ...boardFormulas(parts, stock, kerfMm)],
  }
}
