import type { Point, Shape } from './drawing.ts'
import { at, rectangle, textAround } from './shapes.ts'
import type { Tile, Tiling } from './tiles.ts'

/** A small map of how the tiles lie, the one at hand shaded. */
export function tileMap(
  corner: Point,
  { columns, rows, tiles }: Tiling,
  here: Tile,
  room: { lengthMm: number; widthMm: number },
): Shape[] {
  const [lengthMm, widthMm] = [Math.min(8, room.lengthMm / columns), Math.min(5, room.widthMm / rows)]
  const sizeMm = Math.min(2.2, 0.6 * widthMm, 0.38 * lengthMm)
  return tiles.flatMap((tile) => {
    const [xMm, yMm] = [corner.xMm + tile.column * lengthMm, corner.yMm + (rows - 1 - tile.row) * widthMm]
    return [
      rectangle(tile.name === here.name ? 'shade' : 'dimension', { xMm, yMm, lengthMm, widthMm }),
      ...(sizeMm < 1.4 ? [] : [textAround(at(xMm + lengthMm / 2, yMm + widthMm / 2), tile.name, { sizeMm })]),
    ]
  })
}
