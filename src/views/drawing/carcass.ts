import type { Role } from '../../core/shop/joint-panels.ts'
import type { Sides } from '../../schema/box.ts'
import type { Panel } from '../../schema/panel.ts'

/** The four kinds of panel that make a box. */
export type Carcass = Record<'front' | 'back' | 'side' | 'topBottom', Panel>

/** The box that panels make; null for plain parts. */
export function carcassOf(panels: readonly Panel[]): Carcass | null {
  const named = (role: Role) => panels.find(({ id }) => id === role)
  const [front, back, side, topBottom] = [named('front'), named('back'), named('side'), named('top-bottom')]
  return front && back && side && topBottom ? { front, back, side, topBottom } : null
}

/** true when the front lies between the other panels, so that their edges show around it. */
export const isInset = ({ front, side, topBottom }: Carcass): boolean =>
  side.lengthMm > front.widthMm || topBottom.lengthMm > front.lengthMm

/** The room between the panels, mm: top and bottom are as deep as it only where they butt against the front. */
export function innerSides(carcass: Carcass): Sides {
  const { front, topBottom } = carcass
  const twice = 2 * (front.thicknessMm ?? 0)
  const inset = isInset(carcass)
  const butts = !inset && topBottom.lengthMm < front.lengthMm
  return {
    widthMm: front.lengthMm - (inset ? 0 : twice),
    heightMm: front.widthMm - (inset ? 0 : twice),
    depthMm: topBottom.widthMm - (butts ? 0 : twice),
  }
}
