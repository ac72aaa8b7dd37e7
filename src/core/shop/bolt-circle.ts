/** A point on a panel, mm. */
export interface Point {
  xMm: number
  yMm: number
}

/** First hole at 45 degrees for four, on top for any other number. Common practice, no source. */
export const usualFirstAngleDeg = (count: number): number => (count === 4 ? 45 : 90)

/**
 * Screw holes evenly spread on a circle, counter-clockwise, from its centre. Geometry.
 * @param diameterMm     of the circle, mm
 * @param firstAngleDeg  from the x axis, degrees
 */
export function boltPositions(diameterMm: number, count: number, firstAngleDeg: number): Point[] {
  return Array.from({ length: count }, (_, bolt) => {
    const angle = ((firstAngleDeg + (360 * bolt) / count) * Math.PI) / 180
    return { xMm: (diameterMm / 2) * Math.cos(angle), yMm: (diameterMm / 2) * Math.sin(angle) }
  })
}
