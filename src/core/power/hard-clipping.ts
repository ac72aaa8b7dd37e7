/** A sine driven into a flat ceiling. */
export interface Clipping {
  /** Total power over the power of the sine that just touches the ceiling. */
  powerOverUnclipped: number
  /** Total harmonic distortion re the fundamental, percent. */
  thdPercent: number
}

/**
 * A sine of `drive` times the ceiling, cut off flat.
 * Source: derived; mean square and fundamental of the clipped wave over a quarter turn, clipping from the angle
 * asin(1/drive).
 * @param drive  amplitude over the ceiling (≥ 1)
 */
export function hardClipping(drive: number): Clipping {
  const angle = Math.asin(1 / drive)
  const meanSquare =
    (2 / Math.PI) * ((drive ** 2 * (angle - Math.sin(angle) * Math.cos(angle))) / 2 + (Math.PI / 2 - angle))
  const fundamental = (2 / Math.PI) * (drive * angle + Math.sqrt(1 - 1 / drive ** 2))
  const fundamentalSquare = fundamental ** 2 / 2
  const harmonics = Math.max(0, meanSquare - fundamentalSquare)
  return {
    powerOverUnclipped: 2 * meanSquare,
    thdPercent: 100 * Math.sqrt(harmonics / fundamentalSquare),
  }
}

/** Power over the unclipped power at a given distortion, by halving the interval of the drive. Derived. */
export function clippedPowerRatio(thdPercent: number): number {
  let low = 1
  let high = 10
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2
    if (hardClipping(middle).thdPercent < thdPercent) low = middle
    else high = middle
  }
  return hardClipping(low).powerOverUnclipped
}
