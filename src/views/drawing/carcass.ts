import type { Role } from '../../core/shop/joint-panels.ts'
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
