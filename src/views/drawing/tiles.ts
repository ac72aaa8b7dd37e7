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

/** Tiles of a room's size that cover a thing, each overlapping the next; the thing stands in the middle of them. */
export function tiling(thing: Rectangle, room: { lengthMm: number; widthMm: number }): Tiling {
  const [columns, rows] = [along(thing.lengthMm, room.lengthMm), along(thing.widthMm, room.widthMm)]
  const coveredMm = (count: number, roomMm: number) => count * (roomMm - OVERLAP_MM) + OVERLAP_MM
  const left = thing.xMm - (coveredMm(columns, room.lengthMm) - thing.lengthMm) / 2
  const top = thing.yMm + thing.widthMm + (coveredMm(rows, room.widthMm) - thing.widthMm) / 2
  const tiles = Array.from({ length: columns * rows }, (_, index): Tile => {
    const [column, row] = [index % columns, Math.floor(index / columns)]
    const xMm = left + column * (room.lengthMm - OVERLAP_MM)
    const yMm = top - row * (room.widthMm - OVERLAP_MM) - room.widthMm
    return { name: `${lettered(row)}${column + 1}`, column, row, window: { xMm, yMm, ...room } }
  })
  return { columns, rows, tiles }
}
