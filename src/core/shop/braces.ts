import type { Brace } from '../../schema/fittings.ts'
import type { Assumption } from '../../schema/frame.ts'
import type { Hole, Panel } from '../../schema/panel.ts'
import { braceSizeMm, USUAL_OPEN_SHARE } from '../box/braces.ts'
import type { BoxPlan } from './box-plan.ts'
import type { Front } from './holes.ts'
import { behindMagnetMm, tubeInsideMm } from './inside-fit.ts'
import { boardMassKg, densityKgPerM3 } from './mass.ts'

/** A brace with its place settled. */
export interface PlacedBrace {
  id: string
  /** Where the request describes it. */
  at: string
  brace: Brace
  /** Middle of the board from floor, left wall or front, inside, mm. */
  atMm: number
  /** true when the place was chosen here. */
  chosen: boolean
}

/** A brace and a body that want the same room, and by how much, mm. */
export interface BraceClash {
  at: string
  brace: string
  body: string
  shortMm: number
}

/** Something round that stands into the box behind the front, in coordinates of its inside, mm. */
interface Round {
  id: string
  xMm: number
  yMm: number
  diameterMm: number
  depthMm: number
}

const insetMm = (front: Panel, plan: BoxPlan): number => (front.lengthMm - plan.inner.widthMm) / 2

function roundsOf({ holes, items }: Front, front: Panel, plan: BoxPlan): Round[] {
  const inset = insetMm(front, plan)
  const { thicknessMm, outer } = plan.carcass
  return holes.flatMap((hole: Hole): Round[] => {
    const driver = items.drivers.find(({ id }) => id === hole.id)
    const port = items.ports.find(({ id }) => id === hole.id)
    const diameterMm = driver?.holeMm ?? port?.outerDiameterMm ?? null
    if (diameterMm === null) return []
    const depthMm =
      driver === undefined
        ? tubeInsideMm(plan.portLengthMm ?? 0, thicknessMm)
        : outer.depthMm - 2 * thicknessMm - behindMagnetMm(outer.depthMm, thicknessMm, driver.frame.depthMm)
    return [{ id: hole.id, xMm: hole.xMm - inset, yMm: hole.yMm - inset, diameterMm, depthMm }]
  })
}

const alongOf = ({ lies }: Brace, round: Round): number => (lies === 'level' ? round.yMm : round.xMm)

/** Middle of the widest gap that bodies leave along the height of the box, mm; the middle of the box without any. */
function widestGapMm(rounds: readonly Round[], lengthMm: number): number {
  const taken = rounds
    .map(({ yMm, diameterMm }) => ({ from: yMm - diameterMm / 2, to: yMm + diameterMm / 2 }))
    .sort((a, b) => a.from - b.from)
  // Only gaps between bodies: at the ends a brace holds nothing that the walls do not.
  const gaps = taken.slice(1).map(({ from }, i) => {
    const before = Math.max(...taken.slice(0, i + 1).map(({ to }) => to))
    return { middleMm: (before + from) / 2, widthMm: from - before }
  })
  const widest = gaps.reduce((best, gap) => (gap.widthMm > best.widthMm ? gap : best), {
    middleMm: lengthMm / 2,
    widthMm: 0,
  })
  return widest.middleMm
}

/** Every brace with its place, in the order of the request. */
export function placedBraces(plan: BoxPlan, front: Front, panel: Panel): PlacedBrace[] {
  const rounds = roundsOf(front, panel, plan)
  const { widthMm, heightMm, depthMm } = plan.inner
  const middle = { level: widestGapMm(rounds, heightMm), upright: widthMm / 2, 'behind-front': depthMm / 2 }
  return plan.braces.map((brace, index) => ({
    id: plan.braces.length > 1 ? `brace ${index + 1}` : 'brace',
    at: `/box/braces/${index}`,
    brace,
    atMm: brace.atMm ?? middle[brace.lies],
    chosen: brace.atMm === undefined,
  }))
}

/** The panels that braces are cut from, for the whole set. */
export const bracePanels = (plan: BoxPlan, braces: readonly PlacedBrace[]): Panel[] =>
  braces.map(({ id, brace }) => {
    const [lengthMm, widthMm] = braceSizeMm(brace, plan.inner)
    const { thicknessMm } = plan.carcass
    const openShare = brace.openShare ?? USUAL_OPEN_SHARE
    const solid = boardMassKg(lengthMm * widthMm * 1e-6, thicknessMm, densityKgPerM3(plan.material))
    return {
      id,
      count: plan.boxes,
      lengthMm,
      widthMm,
      thicknessMm,
      sawLengthMm: lengthMm,
      sawWidthMm: widthMm,
      grain: 'any',
      holes: openShare === 0 ? [] : [windowIn(lengthMm, widthMm, thicknessMm, openShare)],
      bandedEdges: [],
      massKg: solid * (1 - openShare),
      resonance: null,
    }
  })

/** A window of the shape of its brace, in the middle. Geometry. */
function windowIn(lengthMm: number, widthMm: number, depthMm: number, openShare: number): Hole {
  const scale = Math.sqrt(openShare)
  return {
    id: 'window',
    kind: 'window',
    xMm: lengthMm / 2,
    yMm: widthMm / 2,
    diameterMm: null,
    slotWidthMm: scale * lengthMm,
    slotHeightMm: scale * widthMm,
    drillMm: null,
    toolNote: 'Drill the corners, saw the window out; rounded corners hold best.',
    through: true,
    depthMm,
  }
}

/** Braces that meet the body of a driver or a tube, each with the worst one. Geometry. */
export function braceClashes(
  plan: BoxPlan,
  front: Front,
  panel: Panel,
  braces: readonly PlacedBrace[],
): BraceClash[] {
  const rounds = roundsOf(front, panel, plan)
  const half = plan.carcass.thicknessMm / 2
  return braces.flatMap(({ id, at, brace, atMm }) =>
    rounds
      .map((round) => ({
        at,
        brace: id,
        body: round.id,
        shortMm:
          brace.lies === 'behind-front'
            ? round.depthMm - (atMm - half)
            : round.diameterMm / 2 + half - Math.abs(alongOf(brace, round) - atMm),
      }))
      .filter(({ shortMm }) => shortMm > 0)
      .sort((a, b) => b.shortMm - a.shortMm)
      .slice(0, 1),
  )
}

/** What was filled in of the braces. */
export const braceAssumptions = (braces: readonly PlacedBrace[]): Assumption[] =>
  braces.flatMap(({ at, brace, atMm, chosen }) => [
    ...(chosen
      ? [
          {
            at: `${at}/atMm`,
            value: atMm,
            unit: 'mm',
            why: brace.lies === 'level' ? 'the widest gap on the front, else the middle' : 'the middle',
          },
        ]
      : []),
    ...(brace.openShare === undefined
      ? [
          {
            at: `${at}/openShare`,
            value: USUAL_OPEN_SHARE,
            unit: '',
            why: 'a window of half the brace; common practice, no source',
          },
        ]
      : []),
  ])
