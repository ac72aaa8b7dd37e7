import type { Brace } from '../../schema/fittings.ts'
import type { Assumption } from '../../schema/frame.ts'
import type { Hole, Panel } from '../../schema/panel.ts'
import { braceSizeMm, USUAL_OPEN_SHARE } from '../box/braces.ts'
import type { Body } from './bodies-inside.ts'
import type { BoxPlan } from './box-plan.ts'
import { densityKgPerM3, finishedMassKg } from './mass.ts'

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

/** Middles of the gaps that bodies leave along the height of the box, the widest first, mm. */
function gapsMm(bodies: readonly Body[]): number[] {
  const taken = bodies
    .map(({ yMm, diameterMm, slotHeightMm }) => ({
      yMm,
      halfMm: ((diameterMm ?? 0) + (slotHeightMm ?? 0)) / 2,
    }))
    .map(({ yMm, halfMm }) => ({ from: yMm - halfMm, to: yMm + halfMm }))
    .sort((a, b) => a.from - b.from)
  // Only gaps between bodies: at the ends a brace holds nothing that the walls do not.
  return taken
    .slice(1)
    .map(({ from }, i) => {
      const before = Math.max(...taken.slice(0, i + 1).map(({ to }) => to))
      return { middleMm: (before + from) / 2, widthMm: from - before }
    })
    .filter(({ widthMm }) => widthMm > 0)
    .sort((a, b) => b.widthMm - a.widthMm)
    .map(({ middleMm }) => middleMm)
}

/** The inner side of the box that a brace divides, along which its place counts. */
export const INNER_SIDE = { level: 'heightMm', upright: 'widthMm', 'behind-front': 'depthMm' } as const

/**
 * Every brace with its place, in the order of the request: level ones in the widest gaps between what stands behind
 * the front as long as there are gaps, all others spread evenly. Common practice, no source.
 */
export function placedBraces(plan: BoxPlan, bodies: readonly Body[]): PlacedBrace[] {
  const gaps = gapsMm(bodies)
  const free = plan.braces.filter(({ atMm }) => atMm === undefined)
  return plan.braces.map((brace, index) => {
    const alike = free.filter(({ lies }) => lies === brace.lies)
    const rank = alike.indexOf(brace)
    const gap = brace.lies === 'level' && alike.length <= gaps.length ? gaps[rank] : undefined
    const even = ((rank + 1) / (alike.length + 1)) * plan.inner[INNER_SIDE[brace.lies]]
    return {
      id: plan.braces.length > 1 ? `brace ${index + 1}` : 'brace',
      at: `/box/braces/${index}`,
      brace,
      atMm: brace.atMm ?? gap ?? even,
      chosen: brace.atMm === undefined,
    }
  })
}

/** Length and width of the window of a brace, mm: of the shape of the brace, in its middle. Geometry. */
export function windowMm(brace: Brace, plan: BoxPlan): [number, number] {
  const [lengthMm, widthMm] = braceSizeMm(brace, plan.inner)
  const scale = Math.sqrt(brace.openShare ?? USUAL_OPEN_SHARE)
  return [scale * lengthMm, scale * widthMm]
}

/** The panels that braces are cut from, for the whole set. */
export const bracePanels = (plan: BoxPlan, braces: readonly PlacedBrace[]): Panel[] =>
  braces.map(({ id, brace, atMm }) => {
    const [lengthMm, widthMm] = braceSizeMm(brace, plan.inner)
    const { thicknessMm } = plan.carcass
    const openShare = brace.openShare ?? USUAL_OPEN_SHARE
    const holes = openShare === 0 ? [] : [windowIn(lengthMm, widthMm, thicknessMm, windowMm(brace, plan))]
    return {
      id,
      count: plan.boxes,
      lengthMm,
      widthMm,
      thicknessMm,
      sawLengthMm: lengthMm,
      sawWidthMm: widthMm,
      grain: 'any',
      holes,
      bandedEdges: [],
      massKg: finishedMassKg({ lengthMm, widthMm, holes }, thicknessMm, densityKgPerM3(plan.material)),
      resonance: null,
      stands: { lies: brace.lies, atMm },
    }
  })

function windowIn(
  lengthMm: number,
  widthMm: number,
  depthMm: number,
  [along, across]: [number, number],
): Hole {
  return {
    id: 'window',
    kind: 'window',
    xMm: lengthMm / 2,
    yMm: widthMm / 2,
    diameterMm: null,
    slotWidthMm: along,
    slotHeightMm: across,
    drillMm: null,
    toolNote: 'Drill the corners, saw the window out; rounded corners hold best.',
    through: true,
    depthMm,
  }
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
            why:
              brace.lies === 'level'
                ? 'a gap between what stands behind the front, else evenly spread'
                : 'evenly spread',
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
