import type { CutListRequest } from '../../schema/cut-list.ts'
import type { Hole, Panel } from '../../schema/panel.ts'
import type { Back } from './back.ts'
import { type Body, backBodies, CONTROL_BODY, frontBodies, insetMm, magnetMm } from './bodies-inside.ts'
import type { BoxPlan } from './box-plan.ts'
import { braceClashes, crossingBraces, outsideBrace } from './brace-clashes.ts'
import type { PlacedBrace } from './braces.ts'
import { edgeGapMm, gapMm, narrowestWeb, type Web } from './hole-gaps.ts'
import type { Front } from './holes.ts'
import { least } from './least.ts'
import type { PlacedItem } from './panel-item.ts'
import type { ShopFacts } from './shop-facts.ts'

/** What is inside and on the back, with its places settled. */
export interface Inside {
  braces: readonly PlacedBrace[]
  back: Back
}

type InsideFacts = Pick<
  ShopFacts,
  | 'braceClashes'
  | 'braceOutside'
  | 'braceCross'
  | 'divider'
  | 'homeless'
  | 'backWeb'
  | 'depthClash'
  | 'overWall'
  | 'laminate'
>

/** Reaches this little over a wall by the dust of arithmetic alone, mm. */
const DUST_MM = 1e-6

const isScrew = ({ kind }: Hole): boolean => kind === 'bolt' || kind === 'mounting'

/** Facts about braces, about the back, and about what they meet. */
export function insideFacts(
  request: CutListRequest,
  plan: BoxPlan,
  front: Front,
  panel: Panel,
  { braces, back }: Inside,
): InsideFacts {
  const onBack = backBodies(back, panel, plan)
  const baskets = frontBodies(front, panel, plan, ({ holeMm }) => holeMm)
  const magnets = frontBodies(front, panel, plan, magnetMm)
  const drilled = back.holes.filter((hole) => !isScrew(hole))
  const stock = request.stock.findIndex(
    ({ laminated, thicknessMm = plan.carcass.thicknessMm }) =>
      laminated === true && thicknessMm === plan.carcass.thicknessMm,
  )
  return {
    braceClashes: braceClashes(plan, [...baskets, ...onBack], braces),
    braceOutside: outsideBrace(plan, braces),
    braceCross: crossingBraces(braces),
    divider: braces.find(({ brace }) => brace.openShare === 0)?.at ?? null,
    homeless: back.homeless,
    backWeb: webWithPlace(narrowestWeb(drilled, panel.lengthMm, panel.widthMm), placeIn(request, back.items)),
    depthClash: depthClash(magnets, onBack, front, plan),
    overWall: overWall(request, plan, front, panel, back, [...magnets, ...onBack]),
    laminate: stock < 0 ? null : `/stock/${stock}/laminated`,
  }
}

/** Where the request describes or places something on a panel; the box itself where it does neither. */
const placeIn =
  ({ box }: CutListRequest, items: readonly PlacedItem[]) =>
  (id: string): string => {
    const told = (box?.holes ?? []).findIndex((hole) => hole.for === id)
    return told < 0 ? (items.find((item) => item.id === id)?.at ?? '/box') : `/box/holes/${told}`
  }

/** The narrowest wood, told at the later of both that the request describes. */
function webWithPlace(web: Web | null, placeOf: (id: string) => string): ShopFacts['backWeb'] {
  if (web === null) return null
  const described = web.between.map(placeOf).filter((at) => at !== '/box')
  return { ...web, at: described.at(-1) ?? '/box' }
}

/** What comes from the front and what comes from the back where they meet worst in depth. Geometry. */
function depthClash(
  fromFront: readonly Body[],
  fromBack: readonly Body[],
  front: Front,
  { inner }: BoxPlan,
): ShopFacts['depthClash'] {
  const met = fromBack.flatMap((back) =>
    fromFront
      .filter((body) => gapMm(body, back) < 0)
      .map((body) => ({
        at: back.at,
        between: [`${back.id} on the back`, `${body.id} on the front`] as [string, string],
        shortMm: body.toMm - back.fromMm,
      })),
  )
  const through = [
    ...fromBack.map(({ at, id, fromMm }) => ({
      at,
      between: [`${id} on the back`, 'the front'] as [string, string],
      shortMm: -fromMm,
    })),
    ...fromFront
      .filter(({ at }) => front.fittings.some((fitting) => fitting.at === at))
      .map(({ at, id, toMm }) => ({
        at,
        between: [`${id} on the front`, 'the back'] as [string, string],
        shortMm: toMm - inner.depthMm,
      })),
  ]
  return least(
    [...met, ...through].filter(({ shortMm }) => shortMm > 0),
    ({ shortMm }) => -shortMm,
  )
}

/** What reaches furthest over the walls behind the front or before the back. Geometry. */
function overWall(
  request: CutListRequest,
  plan: BoxPlan,
  front: Front,
  panel: Panel,
  back: Back,
  bodies: readonly Body[],
): ShopFacts['overWall'] {
  const inset = insetMm(panel, plan)
  const { widthMm, heightMm } = plan.inner
  const placeOf = placeIn(request, [...front.fittings, ...back.items])
  const drilled = (holes: readonly Hole[], side: string) =>
    holes
      .filter((hole) => !isScrew(hole))
      .map((hole) => ({
        at: placeOf(hole.id),
        id: `${hole.id} on the ${side}`,
        overMm: -edgeGapMm(hole, panel.lengthMm, panel.widthMm, inset),
      }))
  const standing = bodies
    .filter(({ at }) => at === CONTROL_BODY || at.startsWith('/box/fittings'))
    .map((body) => ({ at: body.at, id: body.id, overMm: -edgeGapMm(body, widthMm, heightMm) }))
  const all = [...drilled(front.holes, 'front'), ...drilled(back.holes, 'back'), ...standing]
  return least(
    all.filter(({ overMm }) => overMm > DUST_MM),
    ({ overMm }) => -overMm,
  )
}
