import type { Point, Rectangle, Segments } from './drawing.ts'
import { at } from './shapes.ts'

/**
 * Parallel lines at 45 degrees that fill a rectangle.
 * @param stepMm   distance from line to line along x
 * @param falling  true for lines that fall to the right
 */
export function hatch(area: Rectangle, stepMm: number, falling = false): Segments {
  const { xMm, yMm, lengthMm, widthMm } = area
  const count = Math.floor((lengthMm + widthMm) / stepMm)
  const segments = Array.from({ length: count }, (_, index): [Point, Point] => {
    const along = (index + 1) * stepMm
    // Rising lines x - y = along - width, seen from the lower left corner, cut off at all four sides.
    const fromX = Math.max(0, along - widthMm)
    const toX = Math.min(lengthMm, along)
    const heightAt = (x: number) => x - along + widthMm
    const place = (x: number) => at(xMm + x, falling ? yMm + widthMm - heightAt(x) : yMm + heightAt(x))
    return [place(fromX), place(toX)]
  })
  return { kind: 'segments', role: 'hatch', segments }
}
