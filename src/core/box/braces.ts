import type { Box, Sides } from '../../schema/box.ts'
import type { Brace } from '../../schema/fittings.ts'

/** Window of a brace when the request does not say: half of it. Common practice, no source. */
export const USUAL_OPEN_SHARE = 0.5

/** Length and width of a brace from wall to wall, mm. Geometry. */
export function braceSizeMm({ lies }: Pick<Brace, 'lies'>, inner: Sides): [number, number] {
  if (lies === 'level') return [inner.widthMm, inner.depthMm]
  return lies === 'upright' ? [inner.heightMm, inner.depthMm] : [inner.heightMm, inner.widthMm]
}

/** Air that the braces take up, litres: their boards less their windows. Geometry. */
export const bracesL = ({ braces = [] }: Pick<Box, 'braces'>, inner: Sides, thicknessMm: number): number =>
  braces.reduce((sum, brace) => {
    const [length, width] = braceSizeMm(brace, inner)
    return sum + length * width * thicknessMm * (1 - (brace.openShare ?? USUAL_OPEN_SHARE)) * 1e-6
  }, 0)

/** Air that circuit boards inside take up, litres: a cuboid as deep as they reach. An upper bound; geometry. */
export const boardsL = ({ fittings = [] }: Pick<Box, 'fittings'>): number =>
  fittings.reduce(
    (sum, { board, depthMm = 0 }) =>
      sum + (board === undefined ? 0 : board.widthMm * board.heightMm * depthMm * 1e-6),
    0,
  )
