import type { Sides } from '../../schema/box.ts'
import type { CutListRequest } from '../../schema/cut-list.ts'
import type { Panel } from '../../schema/panel.ts'
import type { Box, BoxPlan } from './box-plan.ts'
import { INNER_SIDE, type PlacedBrace } from './braces.ts'
import { bandedEdges, type Edge } from './edging.ts'
import { jointPanels, type Role } from './joint-panels.ts'
import { jointWasteMm3 } from './joint-waste.ts'
import { densityKgPerM3, finishedMassKg } from './mass.ts'
import { panelResonance } from './panel-resonance.ts'

/** Side of each panel that runs with the grain, so that it runs one way round the box. */
const GRAIN = {
  any: { front: 'any', back: 'any', side: 'any', 'top-bottom': 'any' },
  upright: { front: 'width', back: 'width', side: 'length', 'top-bottom': 'length' },
  level: { front: 'length', back: 'length', side: 'width', 'top-bottom': 'length' },
} as const satisfies Record<NonNullable<Box['grain']>, Record<Role, Panel['grain']>>

/** Panels of the whole set, without their holes, their mass and their resonance. */
export function boxPanels(request: CutListRequest, plan: BoxPlan): Panel[] {
  const edges = request.workshop?.edging === undefined ? 'none' : (request.workshop.edging.edges ?? 'front')
  const bandMm = request.workshop?.edging?.thicknessMm ?? 0
  const { thicknessMm } = plan.carcass
  return jointPanels(plan.carcass).map((panel) => {
    const banded = bandedEdges(plan.carcass, panel.role, edges)
    const less = (first: Edge, second: Edge) =>
      bandMm * banded.filter((edge) => edge === first || edge === second).length
    return {
      id: panel.role,
      count: panel.count * plan.boxes,
      lengthMm: panel.lengthMm,
      widthMm: panel.widthMm,
      thicknessMm,
      sawLengthMm: panel.lengthMm - less('left', 'right'),
      sawWidthMm: panel.widthMm - less('bottom', 'top'),
      grain: GRAIN[request.box?.grain ?? 'any'][panel.role],
      holes: [],
      bandedEdges: banded,
      resonance: null,
      stands: null,
      massKg: null,
    }
  })
}

/** A panel with its holes, and with its mass once its joints are cut. */
export function drilled(panel: Panel, holes: Panel['holes'], { carcass, material }: BoxPlan): Panel {
  const made = { ...panel, holes }
  const density = densityKgPerM3(material)
  return {
    ...made,
    massKg: finishedMassKg(made, carcass.thicknessMm, density, jointWasteMm3(carcass, panel)),
  }
}

const FREE_SIDES: Record<string, readonly [keyof Sides, keyof Sides]> = {
  front: ['heightMm', 'widthMm'],
  back: ['heightMm', 'widthMm'],
  side: ['heightMm', 'depthMm'],
  'top-bottom': ['widthMm', 'depthMm'],
}

/** The longest stretch between walls and braces, mm; a brace that stands outside the walls holds nothing. Geometry. */
function freeMm(side: keyof Sides, { inner, carcass }: BoxPlan, braces: readonly PlacedBrace[]): number {
  const half = carcass.thicknessMm / 2
  const held = braces
    .filter(({ brace, atMm }) => INNER_SIDE[brace.lies] === side && atMm < inner[side])
    .map(({ atMm }) => atMm)
    .sort((a, b) => a - b)
  const starts = [0, ...held.map((atMm) => atMm + half)]
  const ends = [...held.map((atMm) => atMm - half), inner[side]]
  return Math.max(...starts.map((start, index) => (ends[index] ?? start) - start))
}

/** The free part of a panel between walls and braces, mm; null for what is no wall of the box. */
export function freeSidesMm(
  id: string,
  plan: BoxPlan,
  braces: readonly PlacedBrace[],
): [number, number] | null {
  const sides = FREE_SIDES[id]
  return sides === undefined ? null : [freeMm(sides[0], plan, braces), freeMm(sides[1], plan, braces)]
}

/** A panel with the resonance of its free part. */
export function ringing(panel: Panel, plan: BoxPlan, braces: readonly PlacedBrace[]): Panel {
  const free = freeSidesMm(panel.id, plan, braces)
  if (free === null) return panel
  const { material, carcass } = plan
  const density = densityKgPerM3(material)
  return { ...panel, resonance: panelResonance(...free, carcass.thicknessMm, material, density) }
}
