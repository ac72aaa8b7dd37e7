import type { CutListRequest } from '../../schema/cut-list.ts'
import type { Panel } from '../../schema/panel.ts'
import { type BoxPlan, grossVolumeL } from './box-plan.ts'
import { ductOf } from './duct.ts'
import { stripEachMm } from './edging.ts'
import { fittingFacts, type Inside } from './fitting-facts.ts'
import { CLEAR_DIAMETERS, unmeasuredDrivers } from './front-bodies.ts'
import { edgeGapMm, gapMm, narrowestWeb } from './hole-gaps.ts'
import { coverMm, landMm } from './hole-saw.ts'
import { drillingOf, type Front, sawFor, wantedFor } from './holes.ts'
import { behindMagnetMm, behindTubeMm, bodyGapMm, tubeInsideMm } from './inside-fit.ts'
import { frontCovers, gluedEdgesMm } from './joint-panels.ts'
import { edgeScrews, isFibreboard, jointScrewMm, longestScrewMm, thickestEdgeScrewMm } from './screws.ts'
import type { ShopFacts } from './shop-facts.ts'

/** Thinnest usual board by the air inside, L and mm. Common practice, no source. */
const USUAL_THICKNESS: readonly { toL: number; thicknessMm: number }[] = [
  { toL: 2, thicknessMm: 6 },
  { toL: 8, thicknessMm: 9 },
  { toL: Infinity, thicknessMm: 15 },
]

/** The item with the least measure, or null of none. */
function least<Item>(items: readonly Item[], measure: (item: Item) => number): Item | null {
  return items.reduce<Item | null>(
    (best, item) => (best === null || measure(item) < measure(best) ? item : best),
    null,
  )
}

/** Every pair of items, each once. */
const pairs = <Item>(items: readonly Item[]): [Item, Item][] =>
  items.flatMap((first, index) => items.slice(index + 1).map((second): [Item, Item] => [first, second]))

/** The narrowest wood of the front; a slot on the floor of the box opens an inset front at its edge. */
function webFact({ holes, items }: Front, panel: Panel, { carcass }: BoxPlan): ShopFacts['web'] {
  const drilled = holes.filter((hole) => hole.kind !== 'bolt')
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
  const { portLengthMm, port } = plan
  if (port === undefined || portLengthMm === null) return null
  const { outer, thicknessMm } = plan.carcass
  const slotLeast = port.slot === undefined ? 0 : Math.min(port.slot.widthMm, port.slot.heightMm)
  const leastMm = port.innerDiameterMm ?? slotLeast
  const tubes = front.holes.flatMap((hole) => {
    const outerMm = front.items.ports.find(({ id }) => id === hole.id)?.outerDiameterMm
    return outerMm === undefined || outerMm === null ? [] : [{ ...hole, diameterMm: outerMm }]
  })
  const insetMm = (panel.lengthMm - plan.inner.widthMm) / 2
  const toWalls = tubes.map((tube) => edgeGapMm(tube, panel.lengthMm, panel.widthMm, insetMm))
  return {
    insideMm: tubeInsideMm(portLengthMm, thicknessMm),
    behindMm: behindTubeMm(outer.depthMm, thicknessMm, portLengthMm),
    leastMm,
    sideMm: toWalls.length === 0 ? leastMm : Math.min(...toWalls),
    leastSideMm: CLEAR_DIAMETERS * leastMm,
  }
}

/** Magnets, or cut-outs where no magnet is measured, against each other and against tubes. */
function bodiesFact({ items, holes }: Front): ShopFacts['bodies'] {
  const round = holes.flatMap((hole) => {
    const driver = items.drivers.find(({ id }) => id === hole.id)
    const diameterMm = driver?.frame.magnetDiameterMm ?? hole.diameterMm
    return (hole.kind === 'driver' || hole.kind === 'port') && diameterMm !== null
      ? [{ id: hole.id, xMm: hole.xMm, yMm: hole.yMm, diameterMm }]
      : []
  })
  const gaps = pairs(round).map(([a, b]) => ({
    gapMm: bodyGapMm(a, b),
    between: [a.id, b.id] as [string, string],
  }))
  return least(gaps, ({ gapMm: gap }) => gap)
}

function sawFacts(
  request: CutListRequest,
  plan: BoxPlan,
  { items }: Front,
): Pick<ShopFacts, 'land' | 'cover' | 'filed' | 'noSaw'> {
  const { pilotMm, sawsMm } = drillingOf(request, plan)
  const drivers = items.drivers.map((driver) => {
    const wanted = wantedFor(driver.frame, pilotMm)
    const choice = sawFor(wanted, sawsMm)
    return {
      id: driver.id,
      sawMm: choice.sawMm,
      holeMm: driver.holeMm,
      landMm: landMm(wanted, driver.holeMm),
      coverMm: coverMm(wanted, driver.holeMm),
      fileMm: choice.fileMm,
    }
  })
  const ports = items.ports.filter(
    ({ outerDiameterMm }) =>
      outerDiameterMm !== null && sawFor({ diameterMm: outerDiameterMm }, sawsMm).sawMm === null,
  )
  return {
    land: least(drivers, (driver) => driver.landMm),
    cover: least(drivers, (driver) => driver.coverMm),
    filed: least(
      drivers.filter(({ fileMm }) => fileMm > 0),
      ({ fileMm }) => -fileMm,
    ),
    noSaw: [...drivers.filter(({ sawMm }) => sawMm === null), ...ports].map(({ id }) => id),
  }
}

function driverScrewFact(request: CutListRequest, plan: BoxPlan, { items }: Front): ShopFacts['driverScrew'] {
  const screw = request.workshop?.screws?.driver
  const thinnest = least(items.drivers, ({ frame }) => frame.flangeThicknessMm ?? 0)
  if (screw === undefined || thinnest === null) return null
  const flangeMm = thinnest.frame.flangeThicknessMm ?? 0
  return { lengthMm: screw.lengthMm, flangeMm, longestMm: longestScrewMm(plan.carcass.thicknessMm, flangeMm) }
}

function faceScrewFact({ holes }: Front, panel: Panel, plan: BoxPlan): ShopFacts['faceScrew'] {
  const screws = holes.filter((hole) => hole.kind === 'bolt')
  if (screws.length === 0 || !isFibreboard(plan.material)) return null
  const toEdges = screws.map(({ xMm, yMm }) => ({
    x: Math.min(xMm, panel.lengthMm - xMm),
    y: Math.min(yMm, panel.widthMm - yMm),
  }))
  return {
    edgeMm: Math.min(...toEdges.map(({ x, y }) => Math.min(x, y))),
    // The guidance asks for the distance along the edge: the longer of both ways to the corner.
    cornerMm: Math.min(...toEdges.map(({ x, y }) => Math.max(x, y))),
  }
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
    bodies: bodiesFact(front),
    ...sawFacts(request, plan, front),
    driverScrew: driverScrewFact(request, plan, front),
    faceScrew: faceScrewFact(front, panel, plan),
    ...joineryFacts(request, plan),
    strip: stripFact(request, panels),
    duct: ductOf(plan),
    unmeasured: unmeasuredDrivers(plan),
    radiator: request.passiveRadiator !== undefined && request.passiveRadiator.frame === undefined,
    ...fittingFacts(request, plan, front, panel, inside),
  }
}
