import type { Box, Sides } from '../../schema/box.ts'

/** Newton steps that carry the scale to the last digit of a double from any start above the root. */
const NEWTON_STEPS = 60

/**
 * Outer sides of given proportions that leave the wanted air inside: the largest root of the cubic in the scale s,
 * (w s - 2t)(h s - 2t)(d s - 2t) = V, by Newton's method from above, where it cannot overshoot. Derived.
 * @param grossVolumeL  air inside before anything is put in, litres (> 0)
 * @param thicknessMm   board, mm
 */
export function outerFromVolume(
  grossVolumeL: number,
  proportions: NonNullable<Box['proportions']>,
  thicknessMm: number,
): Sides {
  const { width, height, depth } = proportions
  const wall = 2 * thicknessMm
  const wanted = grossVolumeL * 1e6
  let scale = (Math.cbrt(wanted) + wall) / Math.min(width, height, depth)
  for (let step = 0; step < NEWTON_STEPS; step++) {
    const [w, h, d] = [width * scale - wall, height * scale - wall, depth * scale - wall]
    scale -= (w * h * d - wanted) / (width * h * d + height * w * d + depth * w * h)
  }
  return { widthMm: width * scale, heightMm: height * scale, depthMm: depth * scale }
}
