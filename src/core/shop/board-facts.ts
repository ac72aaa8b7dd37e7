import type { NotPlaced } from '../../schema/cut-list.ts'
import { mm } from '../say.ts'
import type { NamedPart, NamedStock } from './board-sections.ts'
import { thicknessMeets, waysOf } from './layout/job.ts'
import type { BoardFacts } from './shop-facts.ts'

const further = ({ id, count, smallestBoardMm }: NotPlaced): string =>
  `A further board of ${mm(smallestBoardMm.lengthMm)} by ${mm(smallestBoardMm.widthMm)} takes ${count} x ${id}.`

/** Why parts found no place, and the narrowest part of all. */
export function boardFacts(
  parts: readonly NamedPart[],
  stock: readonly NamedStock[],
  kerfMm: number,
  notPlaced: readonly NotPlaced[],
): BoardFacts {
  const rightThickness = (part: NamedPart) => stock.filter((board) => thicknessMeets(part, board))
  const fits = (part: NamedPart) => stock.some((board) => waysOf(part, board, kerfMm) > 0)
  const tooThick = parts.filter((part) => stock.length > 0 && rightThickness(part).length === 0)
  const tooLarge = parts.filter((part) => rightThickness(part).length > 0 && !fits(part))
  const homeless = new Set([...tooThick, ...tooLarge].map(({ id }) => id))
  const leftOver = notPlaced.filter(({ id }) => !homeless.has(id))
  return {
    hasBoards: stock.length > 0,
    areaM2: parts.reduce((sum, part) => sum + (part.count ?? 1) * part.lengthMm * part.widthMm * 1e-6, 0),
    tooThick: tooThick.map(({ id }) => id),
    tooLarge: tooLarge.map(({ id }) => id),
    leftOver: {
      ids: leftOver.map(({ id }) => id),
      pieces: leftOver.reduce((sum, { count }) => sum + count, 0),
      boards: leftOver.map(further),
    },
    narrowestMm: Math.min(...parts.map((part) => Math.min(part.lengthMm, part.widthMm))),
  }
}
