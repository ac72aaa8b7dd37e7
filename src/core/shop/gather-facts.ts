import type { CutListRequest } from '../../schema/cut-list.ts'
import type { Panel } from '../../schema/panel.ts'
import { frontBodies, insetMm, magnetMm } from './bodies-inside.ts'
import { freeSidesMm } from './box-panels.ts'
import { type BoxPlan, grossVolumeL } from './box-plan.ts'
import { driverScrewFact, faceScrewFact, sawFacts } from './drilling-facts.ts'
import { drillingOf } from './driver-holes.ts'
import { ductOf } from './duct.ts'
import { stripEachMm } from './edging.ts'
import { CLEAR_DIAMETERS, unmeasuredDrivers } from './front-bodies.ts'
import { edgeGapMm, gapMm, narrowestWeb } from './hole-gaps.ts'
import type { Front } from './holes.ts'
import { type Inside, insideFacts } from './inside-facts.ts'
import { behindMagnetMm, behindTubeMm, bushPocket, tubeInsideMm } from './inside-fit.ts'
import { frontCovers, gluedEdgesMm } from './joint-panels.ts'
import { least, pairs } from './least.ts'
import { edgeScrews, jointScrewMm, thickestEdgeScrewMm } from './screws.ts'
import type { ShopFacts } from './shop-facts.ts'

/** Thinnest usual board by the air inside, L and mm. Common practice, no source. */
const USUAL_THICKNESS: readonly { toL: number; thicknessMm: number }[] = [
  { toL: 2, thicknessMm: 6 },
  { toL: 8, thicknessMm: 9 },
  { toL: Infinity, thicknessMm: 15 },
]

/** The narrowest wood of the front; a slot on the floor of the box opens an inset front at its edge. */
function webFact({ holes, items }: Front, panel: Panel, { carcass }: BoxPlan): ShopFacts['web'] {
  const drilled = holes.filter((hole) => hole.kind !== 'bolt' && hole.kind !== 'mounting')
  const open = items.floor && !frontCovers(carcass) ? drilled.filter((hole) => hole.kind === 'slot') : []
  return narrowestWeb(drilled, panel.lengthMm, panel.widthMm, open)
}

function flangeFact({ items, holes }: Front, panel: Panel): ShopFacts['flange'] {
  const flanges = items.drivers.flatMap(({ id, frame }) => {
    const hole = holes.find((candidate) => candidate.id === id)
    return hole === undefined ? [] : [{ ...hole, diameterMm: frame.outerDiameterMm }]
  })
  const gaps = [
    ...pairs(flanges).map(([a, b]) => ({ gapMm: gapMm(a, b), between: [a.id, b.id] as [string, string] })),
    ...flanges.map((flange) => ({
      gapMm: edgeGapMm(flange, panel.lengthMm, panel.widthMm),
      between: [flange.id, 'the edge of the front'] as [string, string],
    })),
  ]
  return least(gaps, ({ gapMm: gap }) => gap)
}

function magnetFact({ items }: Front, { carcass }: BoxPlan): ShopFacts['magnet'] {
  const magnets = items.drivers.map(({ id, at, frame }) => ({
    at,
    id,
    depthMm: frame.depthMm,
    behindMm: behindMagnetMm(carcass.outer.depthMm, carcass.thicknessMm, frame.depthMm),
  }))
  return least(magnets, ({ behindMm }) => behindMm)
}

function tubeFact(front: Front, panel: Panel, plan: BoxPlan): ShopFacts['tube'] {
  const { portReachMm, port } = plan
  if (port === undefined || portReachMm === null) return null
  const { outer, thicknessMm } = plan.carcass
  const slotLeast = port.slot === undefined ? 0 : Math.min(port.slot.widthMm, port.slot.heightMm)
  const leastMm = port.innerDiameterMm ?? slotLeast
  const tubes = front.holes.flatMap((hole) => {
    const outerMm = front.items.ports.find(({ id }) => id === hole.id)?.outerDiameterMm
    return outerMm === undefined || outerMm === null ? [] : [{ ...hole, diameterMm: outerMm }]
  })
  const toWalls = tubes.map((tube) => edgeGapMm(tube, panel.lengthMm, panel.widthMm, insetMm(panel, plan)))
  return {
    insideMm: tubeInsideMm(portReachMm, thicknessMm),
    behindMm: behindTubeMm(outer.depthMm, thicknessMm, portReachMm),
    leastMm,
    sideMm: toWalls.length === 0 ? leastMm : Math.min(...toWalls),
    leastSideMm: CLEAR_DIAMETERS * leastMm,
  }
}

/**
 * What lies side by side inside: magnets, or cut-outs where no magnet is measured, tubes and fittings behind the
 * front; radiators with their flanges and fittings on the back.
 */
function bodiesFact(front: Front, panel: Panel, plan: BoxPlan, { back }: Inside): ShopFacts['bodies'] {
  const behindFront = frontBodies(front, panel, plan, magnetMm).filter(
    ({ at, diameterMm }) => at !== '/port' || diameterMm !== null,
  )
  const onBack = back.items.map(({ id, at, centre, footprint }) => ({ id, at, ...centre, ...footprint }))
  const gaps = [...pairs(behindFront), ...pairs(onBack)].map(([a, b]) => ({
    at: b.at.startsWith('/box') ? b.at : a.at,
    gapMm: gapMm(a, b),
    between: [a.id, b.id] as [string, string],
  }))
  return least(gaps, ({ gapMm: gap }) => gap)
}

function joineryFacts(request: CutListRequest, plan: BoxPlan): Pick<ShopFacts, 'panelScrew' | 'unscrewed'> {
  const { thicknessMm, joint } = plan.carcass
  const screw = request.workshop?.screws?.panel
  if (screw === undefined || joint === 'mitre') return { panelScrew: null, unscrewed: null }
  const edges = gluedEdgesMm(plan.carcass)
  return {
    panelScrew: {
      diameterMm: screw.diameterMm,
      lengthMm: screw.lengthMm,
      thickestMm: thickestEdgeScrewMm(thicknessMm),
      wantedMm: jointScrewMm(thicknessMm, screw.diameterMm),
    },
    unscrewed: {
      edges: edges.filter((edge) => edgeScrews(edge) === 0).length,
      of: edges.length,
      shortestMm: Math.min(...edges),
    },
  }
}

function controlFact(request: CutListRequest, plan: BoxPlan): ShopFacts['control'] {
  const control = request.signal?.volumeControl
  if (control === undefined) return null
  const { thicknessMm, bushMm } = drillingOf(request, plan)
  const { leaveMm: most } = bushPocket(thicknessMm, bushMm)
  const leaveMm = Math.min(most, thicknessMm)
  const { shaftLengthMm } = control
  return { bushMm, leaveMm, knobMm: shaftLengthMm === undefined ? null : shaftLengthMm - leaveMm }
}

/** The wall of the box that rings lowest. */
function ringingFact(plan: BoxPlan, panels: readonly Panel[], { braces }: Inside): ShopFacts['ringing'] {
  const rung = panels.flatMap(({ id, resonance }) => {
    const sidesMm = freeSidesMm(id, plan, braces)
    return resonance === null || sidesMm === null ? [] : [{ id, sidesMm, ...resonance }]
  })
  return least(rung, ({ supportedHz }) => supportedHz)
}

/** The strip, unless no panel has an edge to band: a box mitred all round shows no core. */
function stripFact({ workshop }: CutListRequest, panels: readonly Panel[]): ShopFacts['strip'] {
  const edging = workshop?.edging
  if (edging === undefined || panels.every(({ bandedEdges }) => bandedEdges.length === 0)) return null
  return { boughtMm: edging.widthMm, slitsInto: edging.slitsInto ?? 1, eachMm: stripEachMm(edging) }
}

/** Everything the rules of the workshop look at, from a settled box and its panels. */
export function shopFacts(
  request: CutListRequest,
  plan: BoxPlan,
  front: Front,
  panels: readonly Panel[],
  webMm: number,
  inside: Inside,
): ShopFacts {
  const { thicknessMm, joint } = plan.carcass
  const gross = grossVolumeL(plan)
  const panel = panels.find(({ id }) => id === 'front')
  const bolted = [...front.items.drivers, ...inside.back.radiators]
  if (panel === undefined) throw new Error('every joint has a front')
  return {
    thicknessMm,
    grossVolumeL: gross,
    usualThicknessMm: USUAL_THICKNESS.find(({ toL }) => gross <= toL)?.thicknessMm ?? 0,
    joint,
    column: front.layout,
    web: webFact(front, panel, plan),
    leastWebMm: webMm,
    flange: flangeFact(front, panel),
    magnet: magnetFact(front, plan),
    tube: tubeFact(front, panel, plan),
    bodies: bodiesFact(front, panel, plan, inside),
    ...sawFacts(request, plan, bolted, front.items.ports),
    driverScrew: driverScrewFact(request, plan, bolted),
    faceScrew: faceScrewFact([...front.holes, ...inside.back.holes], panel, plan),
    ...joineryFacts(request, plan),
    strip: stripFact(request, panels),
    duct: ductOf(plan),
    control: controlFact(request, plan),
    ringing: ringingFact(plan, panels, inside),
    unmeasured: unmeasuredDrivers(plan),
    radiator: request.passiveRadiator !== undefined && request.passiveRadiator.frame === undefined,
    ...insideFacts(request, plan, front, panel, inside),
  }
}
