/** Least room behind a magnet, mm. Common practice, no source. */
export const LEAST_BEHIND_MAGNET_MM = 10
/** Least room between bodies inside, mm. Common practice, no source. */
export const LEAST_BETWEEN_BODIES_MM = 5

/** Room between magnet and back board, mm; the depth counts from the front face of the panel. Geometry. */
export const behindMagnetMm = (outerDepthMm: number, thicknessMm: number, driverDepthMm: number): number =>
  outerDepthMm - thicknessMm - driverDepthMm

/** Length of a tube inside the box, mm, when its outer end is flush with the front face. Geometry. */
export const tubeInsideMm = (tubeLengthMm: number, thicknessMm: number): number =>
  Math.max(0, tubeLengthMm - thicknessMm)

/** Room between the inner end of a tube and the back board, mm. Geometry. */
export const behindTubeMm = (outerDepthMm: number, thicknessMm: number, tubeLengthMm: number): number =>
  outerDepthMm - 2 * thicknessMm - tubeInsideMm(tubeLengthMm, thicknessMm)

/** Thickness of a nut that holds a bush, mm. Common practice, no source. */
const NUT_MM = 2.5

/**
 * Panel left where a control goes through, so that its nut finds thread, and the pocket from inside that leaves it, mm.
 * Common practice, no source.
 */
export function bushPocket(thicknessMm: number, bushMm: number): { leaveMm: number; pocketMm: number } {
  const leaveMm = Math.max(0, bushMm - NUT_MM)
  return { leaveMm, pocketMm: Math.max(0, thicknessMm - leaveMm) }
}
