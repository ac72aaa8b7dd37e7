import type { Cut, CutListSections, NotPlaced, Offcut, Sheet } from '../../schema/cut-list.ts'
import type { Part, Stock } from '../../schema/shop.ts'
import { micrometres } from './layout/job.ts'
import type { LaidPart, LaidSheet, Layout } from './layout/layout.ts'
import type { Rect, Separation } from './layout/next-cut.ts'
import { separated } from './layout/separate.ts'
import { smallestBoard } from './layout/smallest-board.ts'

export type NamedPart = Part & { id: string }
export type NamedStock = Stock & { id: string }

/** Offcuts are listed from this size on, both ways, mm. */
const LEAST_OFFCUT_MM = 20

/** Parts named as the request says, else "part 1" and so on. */
export const namedParts = (parts: readonly Part[]): NamedPart[] =>
  parts.map((part, index) => ({ ...part, id: part.id ?? `part ${index + 1}` }))
export const namedStock = (stock: readonly Stock[]): NamedStock[] =>
  stock.map((board, index) => ({ ...board, id: board.id ?? `board ${index + 1}` }))

/** Measures of a layout in the millimetres of the untrimmed board, without the kerf that sizes were enlarged by. */
interface Scale {
  trimMm: number
  kerfMm: number
}

const toMm = (micrometre: number): number => micrometre / 1000

function rectangleMm(rect: Rect, { trimMm, kerfMm }: Scale): Offcut {
  return {
    xMm: trimMm + toMm(rect.xUm),
    yMm: trimMm + toMm(rect.yUm),
    lengthMm: toMm(rect.lengthUm - micrometres(kerfMm)),
    widthMm: toMm(rect.widthUm - micrometres(kerfMm)),
  }
}

function rectOf(part: LaidPart, parts: readonly NamedPart[], kerfUm: number): Rect & { id: string } {
  const { lengthMm, widthMm, id } = parts[part.part]!
  const [length, width] = part.turned ? [widthMm, lengthMm] : [lengthMm, widthMm]
  return {
    id,
    xUm: part.xUm,
    yUm: part.yUm,
    lengthUm: micrometres(length) + kerfUm,
    widthUm: micrometres(width) + kerfUm,
  }
}

/** The four cuts that take the damaged edge off: both ends first, then both long sides. */
function trimCuts(board: NamedStock, { trimMm, kerfMm }: Scale, sheet: number): Omit<Cut, 'step'>[] {
  if (trimMm === 0) return []
  const { lengthMm, widthMm } = board
  const insideLength = lengthMm - 2 * trimMm
  const cut = (direction: Cut['direction'], atMm: number, piece: Offcut): Omit<Cut, 'step'> => ({
    sheet,
    direction,
    atMm,
    piece,
    trim: true,
    leaves: [],
  })
  return [
    cut('across', trimMm - kerfMm, { xMm: 0, yMm: 0, lengthMm, widthMm }),
    cut('across', lengthMm - trimMm, { xMm: trimMm, yMm: 0, lengthMm: lengthMm - trimMm, widthMm }),
    cut('along', trimMm - kerfMm, { xMm: trimMm, yMm: 0, lengthMm: insideLength, widthMm }),
    cut('along', widthMm - trimMm, {
      xMm: trimMm,
      yMm: trimMm,
      lengthMm: insideLength,
      widthMm: widthMm - trimMm,
    }),
  ]
}

const isOn = (rect: Rect, at: Rect): boolean =>
  rect.xUm === at.xUm && rect.yUm === at.yUm && rect.lengthUm === at.lengthUm && rect.widthUm === at.widthUm

/** The two pieces a cut makes. */
function piecesAfter({ at, direction, positionUm }: Separation): Rect[] {
  return direction === 'across'
    ? [
        { ...at, lengthUm: positionUm - at.xUm },
        { ...at, xUm: positionUm, lengthUm: at.xUm + at.lengthUm - positionUm },
      ]
    : [
        { ...at, widthUm: positionUm - at.yUm },
        { ...at, yUm: positionUm, widthUm: at.yUm + at.widthUm - positionUm },
      ]
}

interface SheetWithCuts {
  sheet: Omit<Sheet, 'index'>
  cuts: Cut[]
}

function sheetWithCuts(
  laid: LaidSheet,
  index: number,
  parts: readonly NamedPart[],
  board: NamedStock,
  kerfMm: number,
): SheetWithCuts {
  const scale = { trimMm: board.trimMm ?? 0, kerfMm }
  const kerfUm = micrometres(kerfMm)
  const rects = laid.parts.map((part) => rectOf(part, parts, kerfUm))
  const usable: Rect = {
    xUm: 0,
    yUm: 0,
    lengthUm: micrometres(board.lengthMm) - 2 * micrometres(scale.trimMm) + kerfUm,
    widthUm: micrometres(board.widthMm) - 2 * micrometres(scale.trimMm) + kerfUm,
  }
  const { cuts, offcuts } = separated(usable, rects)
  const sawn = cuts.map(
    (cut): Omit<Cut, 'step'> => ({
      sheet: index,
      direction: cut.direction,
      atMm: scale.trimMm + toMm(cut.positionUm - kerfUm),
      piece: rectangleMm(cut.at, scale),
      trim: false,
      leaves: piecesAfter(cut).flatMap((piece) =>
        rects.filter((rect) => isOn(rect, piece)).map(({ id }) => id),
      ),
    }),
  )
  return {
    sheet: {
      stock: board.id,
      lengthMm: board.lengthMm,
      widthMm: board.widthMm,
      parts: laid.parts.map(({ part, xUm, yUm, turned }) => {
        const { id, lengthMm, widthMm } = parts[part]!
        return { id, xMm: scale.trimMm + toMm(xUm), yMm: scale.trimMm + toMm(yUm), lengthMm, widthMm, turned }
      }),
      offcuts: offcuts
        .map((rect) => rectangleMm(rect, scale))
        .filter(({ lengthMm, widthMm }) => Math.min(lengthMm, widthMm) >= LEAST_OFFCUT_MM),
    },
    cuts: [...trimCuts(board, scale, index), ...sawn].map((cut, step) => ({ ...cut, step: step + 1 })),
  }
}

/** Numbers boards of one name from 1. */
function numbered(sheets: readonly Omit<Sheet, 'index'>[]): Sheet[] {
  const seen = new Map<string, number>()
  return sheets.map((sheet) => {
    const index = (seen.get(sheet.stock) ?? 0) + 1
    seen.set(sheet.stock, index)
    return { ...sheet, index }
  })
}

function largest(offcuts: readonly Offcut[]): CutListSections['largestOffcut'] {
  const [first] = [...offcuts].sort((a, b) => b.lengthMm * b.widthMm - a.lengthMm * a.widthMm)
  return first === undefined ? null : { lengthMm: first.lengthMm, widthMm: first.widthMm }
}

/** What does not fit, each with the smallest further board that would take all pieces of it. */
function notPlacedRows(
  layout: Layout,
  parts: readonly NamedPart[],
  stock: readonly NamedStock[],
  kerfMm: number,
): NotPlaced[] {
  const trimMm = Math.max(0, ...stock.map((board) => board.trimMm ?? 0))
  return [...layout.notPlaced].map(([part, count]) => ({
    id: parts[part]!.id,
    count,
    smallestBoardMm: smallestBoard(parts[part]!, count, kerfMm, trimMm),
  }))
}

type BoardSections = Pick<
  CutListSections,
  'sheets' | 'notPlaced' | 'bound' | 'cuts' | 'usedAreaM2' | 'stockAreaM2' | 'largestOffcut'
>

/** A layout in the words of the contract: millimetres from the untrimmed corner, cuts in sawing order. */
export function boardSections(
  layout: Layout,
  parts: readonly NamedPart[],
  stock: readonly NamedStock[],
  kerfMm: number,
): BoardSections {
  const drawn = layout.sheets.map((laid, index) =>
    sheetWithCuts(laid, index, parts, stock[laid.stock]!, kerfMm),
  )
  const sheets = numbered(drawn.map(({ sheet }) => sheet))
  const area = (rectangles: readonly { lengthMm: number; widthMm: number }[]) =>
    rectangles.reduce((sum, { lengthMm, widthMm }) => sum + lengthMm * widthMm * 1e-6, 0)
  return {
    sheets,
    notPlaced: notPlacedRows(layout, parts, stock, kerfMm),
    bound: layout.bound,
    cuts: drawn.flatMap(({ cuts }) => cuts),
    usedAreaM2: area(sheets.flatMap((sheet) => sheet.parts)),
    stockAreaM2: area(sheets),
    largestOffcut: largest(sheets.flatMap((sheet) => sheet.offcuts)),
  }
}
