import type { Part } from '../../../schema/shop.ts'

/**
 * The board of least area that takes a number of equal parts in rows and columns, trim included, mm. Its length is
 * counted along the length of the parts. Geometry.
 * @param kerfMm  saw cut between two parts
 * @param trimMm  taken off every edge first
 */
export function smallestBoard(
  part: Pick<Part, 'lengthMm' | 'widthMm'>,
  count: number,
  kerfMm: number,
  trimMm: number,
): { lengthMm: number; widthMm: number } {
  const row = (sideMm: number, parts: number) => parts * sideMm + (parts - 1) * kerfMm + 2 * trimMm
  const boards = Array.from({ length: count }, (_, index) => ({
    lengthMm: row(part.lengthMm, index + 1),
    widthMm: row(part.widthMm, Math.ceil(count / (index + 1))),
  }))
  return boards.reduce((least, board) =>
    board.lengthMm * board.widthMm < least.lengthMm * least.widthMm ? board : least,
  )
}
