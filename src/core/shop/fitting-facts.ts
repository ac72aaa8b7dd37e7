import type { CutListRequest } from '../../schema/cut-list.ts'
import type { Panel } from '../../schema/panel.ts'
import type { Back } from './back.ts'
import type { BoxPlan } from './box-plan.ts'
import { braceClashes, type PlacedBrace } from './braces.ts'
import { narrowestWeb } from './hole-gaps.ts'
import type { Front } from './holes.ts'
import type { ShopFacts } from './shop-facts.ts'

/** What is inside and on the back, with its places settled. */
export interface Inside {
  braces: readonly PlacedBrace[]
  back: Back
}

type FittingFacts = Pick<
  ShopFacts,
  'braceClash' | 'divider' | 'backShortMm' | 'backWeb' | 'fittingClash' | 'laminate'
>

/** Facts about braces, about the back, and about what they meet. */
export function fittingFacts(
  request: CutListRequest,
  plan: BoxPlan,
  front: Front,
  panel: Panel,
  { braces, back }: Inside,
): FittingFacts {
  const [worst] = [...braceClashes(plan, front, panel, braces)].sort((a, b) => b.shortMm - a.shortMm)
  const drilled = back.holes.filter(({ kind }) => kind !== 'bolt' && kind !== 'mounting')
  const stock = request.stock.findIndex(
    ({ laminated, thicknessMm = plan.carcass.thicknessMm }) =>
      laminated === true && thicknessMm === plan.carcass.thicknessMm,
  )
  return {
    braceClash: worst ?? null,
    divider: braces.find(({ brace }) => brace.openShare === 0)?.at ?? null,
    backShortMm: back.shortMm,
    backWeb: drilled.length > 1 ? narrowestWeb(drilled, panel.lengthMm, panel.widthMm) : null,
    fittingClash: fittingClash(plan, front, panel, back),
    laminate: stock < 0 ? null : `/stock/${stock}/laminated`,
  }
}

/** The fitting on the back that meets a driver from the front worst; the front is seen from the other side. Geometry. */
function fittingClash(plan: BoxPlan, front: Front, panel: Panel, back: Back): ShopFacts['fittingClash'] {
  const clashes = plan.fittings.flatMap((fitting, index) => {
    const holes = back.holes.filter(({ id }) => id === fitting.id || id.startsWith(`${fitting.id} screw`))
    const { depthMm = 0 } = fitting
    if (holes.length === 0 || depthMm === 0) return []
    const xMm = holes.reduce((sum, hole) => sum + hole.xMm, 0) / holes.length
    const yMm = holes.reduce((sum, hole) => sum + hole.yMm, 0) / holes.length
    return front.items.drivers.flatMap(({ id, frame }) => {
      const hole = front.holes.find((candidate) => candidate.id === id)
      if (hole === undefined) return []
      const halfWidth = (fitting.board?.widthMm ?? fitting.cutout?.widthMm ?? fitting.holeDiameterMm ?? 0) / 2
      const halfHeight =
        (fitting.board?.heightMm ?? fitting.cutout?.heightMm ?? fitting.holeDiameterMm ?? 0) / 2
      const beside = Math.max(0, Math.abs(panel.lengthMm - hole.xMm - xMm) - halfWidth)
      const above = Math.max(0, Math.abs(hole.yMm - yMm) - halfHeight)
      const magnetMm = frame.magnetDiameterMm ?? frame.cutoutDiameterMm
      const reachMm = frame.depthMm - plan.carcass.thicknessMm
      const shortMm = depthMm + reachMm - plan.inner.depthMm
      return Math.hypot(beside, above) < magnetMm / 2 && shortMm > 0
        ? [{ at: `/box/fittings/${index}`, fitting: fitting.id, body: id, shortMm }]
        : []
    })
  })
  return clashes.sort((a, b) => b.shortMm - a.shortMm)[0] ?? null
}
