import type { CutListRequest, CutListSections } from '../../../src/schema/cut-list.ts'

type Piece = { xMm: number; yMm: number; lengthMm: number; widthMm: number }
type Sections = Pick<CutListSections, 'sheets' | 'cuts' | 'notPlaced'>

const NEAR_MM = 1e-6
const near = (a: number, b: number) => Math.abs(a - b) < NEAR_MM
const same = (a: Piece, b: Piece) =>
  near(a.xMm, b.xMm) && near(a.yMm, b.yMm) && near(a.lengthMm, b.lengthMm) && near(a.widthMm, b.widthMm)

/** What two pieces a saw leaves of one; a piece of no width is dust. */
function sawn(piece: Piece, direction: 'along' | 'across', atMm: number, kerfMm: number): Piece[] {
  const { xMm, yMm, lengthMm, widthMm } = piece
  const pieces =
    direction === 'across'
      ? [
          { ...piece, lengthMm: atMm - xMm },
          { ...piece, xMm: atMm + kerfMm, lengthMm: xMm + lengthMm - atMm - kerfMm },
        ]
      : [
          { ...piece, widthMm: atMm - yMm },
          { ...piece, yMm: atMm + kerfMm, widthMm: yMm + widthMm - atMm - kerfMm },
        ]
  return pieces.filter((one) => one.lengthMm > NEAR_MM && one.widthMm > NEAR_MM)
}

/** Follows the printed cuts with a saw, board by board, and tells everything that is wrong. */
function sawSheet(sections: Sections, index: number, kerfMm: number, trimMm: number): string[] {
  const sheet = sections.sheets[index]!
  const wrong: string[] = []
  let pieces: Piece[] = [{ xMm: 0, yMm: 0, lengthMm: sheet.lengthMm, widthMm: sheet.widthMm }]
  const cuts = sections.cuts.filter((cut) => cut.sheet === index)
  cuts.forEach((cut, step) => {
    if (cut.step !== step + 1) wrong.push(`sheet ${index}: step ${cut.step} comes as ${step + 1}`)
    const found = pieces.find((piece) => same(piece, cut.piece))
    if (found === undefined) wrong.push(`sheet ${index}, step ${cut.step}: the piece to cut is not there`)
    else
      pieces = [...pieces.filter((piece) => piece !== found), ...sawn(found, cut.direction, cut.atMm, kerfMm)]
  })
  for (const part of sheet.parts) {
    const [lengthMm, widthMm] = part.turned ? [part.widthMm, part.lengthMm] : [part.lengthMm, part.widthMm]
    const lain = { xMm: part.xMm, yMm: part.yMm, lengthMm, widthMm }
    const found = pieces.find((piece) => same(piece, lain))
    if (found === undefined) wrong.push(`sheet ${index}: ${part.id} does not come out at its size`)
    pieces = pieces.filter((piece) => piece !== found)
    const inside =
      lain.xMm >= trimMm - NEAR_MM &&
      lain.yMm >= trimMm - NEAR_MM &&
      lain.xMm + lengthMm <= sheet.lengthMm - trimMm + NEAR_MM &&
      lain.yMm + widthMm <= sheet.widthMm - trimMm + NEAR_MM
    if (!inside) wrong.push(`sheet ${index}: ${part.id} lies in the trim`)
  }
  for (const offcut of sheet.offcuts) {
    if (!pieces.some((piece) => same(piece, offcut))) wrong.push(`sheet ${index}: an offcut is not there`)
  }
  return wrong
}

/** Boards that are used more often than they are on hand. */
function overdrawn(request: CutListRequest, sections: Sections): string[] {
  return request.stock.flatMap((board, index) => {
    const id = board.id ?? `board ${index + 1}`
    const used = sections.sheets.filter((sheet) => sheet.stock === id).length
    return used > (board.count ?? 1) ? [`${id}: ${used} used, ${board.count ?? 1} on hand`] : []
  })
}

function grainFaults(request: CutListRequest, sections: Sections): string[] {
  return sections.sheets.flatMap((sheet) => {
    const board = request.stock.find(({ id }, index) => (id ?? `board ${index + 1}`) === sheet.stock)
    return sheet.parts.flatMap((laid) => {
      const part = request.parts?.find(({ id }, index) => (id ?? `part ${index + 1}`) === laid.id)
      const [grain, wanted] = [board?.grain ?? 'none', part?.grain ?? 'any']
      if (grain === 'none' || wanted === 'any') return []
      const along = laid.turned ? { length: 'width', width: 'length' }[wanted] : wanted
      return along === grain ? [] : [`${laid.id} lies against the grain`]
    })
  })
}

/**
 * Everything wrong with a layout of plain parts, found without the code under test: cuts followed with a saw from
 * the whole board, every part once or told as not placed, boards within what is on hand, trim and grain kept.
 */
export function faultsOfLayout(request: CutListRequest, sections: Sections): string[] {
  const kerfMm = request.workshop?.kerfMm ?? 0
  const trimOf = (stock: string) =>
    request.stock.find(({ id }, index) => (id ?? `board ${index + 1}`) === stock)?.trimMm ?? 0
  const placed = sections.sheets.flatMap((sheet) => sheet.parts)
  const counts = (request.parts ?? []).flatMap((part, index) => {
    const id = part.id ?? `part ${index + 1}`
    const left = sections.notPlaced.find((row) => row.id === id)?.count ?? 0
    const found = placed.filter((laid) => laid.id === id)
    const right = found.length + left === (part.count ?? 1)
    const sized = found.every((laid) => laid.lengthMm === part.lengthMm && laid.widthMm === part.widthMm)
    return right && sized ? [] : [`${id}: ${found.length} placed, ${left} not, ${part.count ?? 1} wanted`]
  })
  return [
    ...counts,
    ...overdrawn(request, sections),
    ...grainFaults(request, sections),
    ...sections.sheets.flatMap((sheet, index) => sawSheet(sections, index, kerfMm, trimOf(sheet.stock))),
  ]
}
