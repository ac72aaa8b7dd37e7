import type { Rectangle } from './drawing.ts'

/** What neighbouring tiles show twice, so that they can be laid on each other. */
export const OVERLAP_MM = 12

/** One sheet of a picture that is larger than the paper: rows are lettered from the top, columns numbered. */
export interface Tile {
  name: string
  column: number
  row: number
  /** What of the thing it shows. */
  window: Rectangle
}

export interface Tiling {
  columns: number
  rows: number
  tiles: readonly Tile[]
}

const along = (sizeMm: number, roomMm: number): number =>
  sizeMm <= roomMm ? 1 : Math.ceil((sizeMm - OVERLAP_MM) / (roomMm - OVERLAP_MM))

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ'
const lettered = (row: number): string =>
  `${row < 26 ? '' : LETTERS[Math.floor(row / 26) - 1]}${LETTERS[row % 26]}`

/** What tiles show beyond the lower or left end of a thing: a lone one has it in its middle, of several the first begins with it. */
const spareMm = (count: number, sizeMm: number, roomMm: number): number =>
  count === 1 ? (roomMm - sizeMm) / 2 : 0

/** Tiles of a room's size that cover a thing, each overlapping the next, from its lower left corner on. */
export function tiling(thing: Rectangle, room: { lengthMm: number; widthMm: number }): Tiling {
  const { lengthMm, widthMm } = room
  const [columns, rows] = [along(thing.lengthMm, lengthMm), along(thing.widthMm, widthMm)]
  const left = thing.xMm - spareMm(columns, thing.lengthMm, lengthMm)
  const bottom = thing.yMm - spareMm(rows, thing.widthMm, widthMm)
  const tiles = Array.from({ length: columns * rows }, (_, index): Tile => {
    const [column, row] = [index % columns, Math.floor(index / columns)]
    const xMm = left + column * (lengthMm - OVERLAP_MM)
    const yMm = bottom + (rows - 1 - row) * (widthMm - OVERLAP_MM)
    return { name: `${lettered(row)}${column + 1}`, column, row, window: { xMm, yMm, lengthMm, widthMm } }
  })
  return { columns, rows, tiles }
}
