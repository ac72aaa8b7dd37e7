import type { Body } from './bodies-inside.ts'
import type { BoxPlan } from './box-plan.ts'
import { INNER_SIDE, type PlacedBrace, windowMm } from './braces.ts'
import { least } from './least.ts'
import type { ShopFacts } from './shop-facts.ts'

/** A brace and a body that want the same room, and by how much, mm. */
export interface BraceClash {
  at: string
  brace: string
  body: string
  shortMm: number
}

const halfWidth = ({ diameterMm, slotWidthMm }: Body): number => ((diameterMm ?? 0) + (slotWidthMm ?? 0)) / 2
const halfHeight = ({ diameterMm, slotHeightMm }: Body): number =>
  ((diameterMm ?? 0) + (slotHeightMm ?? 0)) / 2

/** true when a body goes through the window of a brace that lies parallel to the front. */
function passesWindow({ brace }: PlacedBrace, body: Body, plan: BoxPlan): boolean {
  const [height, width] = windowMm(brace, plan)
  const { widthMm, heightMm } = plan.inner
  return (
    Math.abs(body.xMm - widthMm / 2) + halfWidth(body) <= width / 2 &&
    Math.abs(body.yMm - heightMm / 2) + halfHeight(body) <= height / 2
  )
}

/** Room that a brace and a body both want, mm; 0 or less when they keep clear of each other. Geometry. */
function sharedMm(placed: PlacedBrace, body: Body, plan: BoxPlan): number {
  const { brace, atMm } = placed
  const half = plan.carcass.thicknessMm / 2
  if (brace.lies === 'level') return halfHeight(body) + half - Math.abs(body.yMm - atMm)
  if (brace.lies === 'upright') return halfWidth(body) + half - Math.abs(body.xMm - atMm)
  if (passesWindow(placed, body, plan)) return 0
  return body.fromMm > 0 ? atMm + half - body.fromMm : body.toMm - (atMm - half)
}

/** Every brace with every body inside and every brace before it that it meets, the worst of each brace first. Geometry. */
export function braceClashes(
  plan: BoxPlan,
  bodies: readonly Body[],
  braces: readonly PlacedBrace[],
): BraceClash[] {
  const { thicknessMm } = plan.carcass
  return braces.flatMap((placed, index) => {
    const { at, id } = placed
    const others = braces
      .slice(0, index)
      .filter(({ brace }) => brace.lies === placed.brace.lies)
      .map((other) => ({ body: other.id, shortMm: thicknessMm - Math.abs(other.atMm - placed.atMm) }))
    const bodiesMet = bodies
      .filter(({ fromMm, toMm }) => toMm > fromMm)
      .map((body) => ({ body: body.id, shortMm: sharedMm(placed, body, plan) }))
    return [...bodiesMet, ...others]
      .filter(({ shortMm }) => shortMm > 0)
      .sort((a, b) => b.shortMm - a.shortMm)
      .map((met) => ({ at, brace: id, ...met }))
  })
}

/** The first two braces that cross each other. */
export function crossingBraces(braces: readonly PlacedBrace[]): { at: string; ids: [string, string] } | null {
  const [first] = braces
  const other = braces.find(({ brace }) => brace.lies !== first?.brace.lies)
  return first === undefined || other === undefined ? null : { at: other.at, ids: [first.id, other.id] }
}

/** The brace that reaches furthest into a wall or past it; null when all stand inside. Geometry. */
export function outsideBrace(
  { inner, carcass }: BoxPlan,
  braces: readonly PlacedBrace[],
): ShopFacts['braceOutside'] {
  const half = carcass.thicknessMm / 2
  const all = braces.map(({ at, id, atMm, brace }) => {
    const sideMm = inner[INNER_SIDE[brace.lies]]
    return { at: `${at}/atMm`, id, overMm: Math.max(half - atMm, atMm + half - sideMm), sideMm }
  })
  return least(
    all.filter(({ overMm }) => overMm > 0),
    ({ overMm }) => -overMm,
  )
}
