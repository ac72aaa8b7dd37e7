import type { Job } from '../../../../src/core/shop/layout/job.ts'
import type { Sheet } from '../../../../src/core/shop/layout/packing.ts'

export interface Lain {
  x: number
  y: number
  length: number
  width: number
}

/** Where the pieces of a sheet lie, from the sizes of the job alone. */
export const lainOn = (job: Job, sheet: Sheet): Lain[] =>
  sheet.pieces.map((piece, index) => {
    const [length, width] = [job.lengthUm[piece]!, job.widthUm[piece]!]
    const [x, y] = [sheet.xUm[index]!, sheet.yUm[index]!]
    return sheet.turned[index] ? { x, y, length: width, width: length } : { x, y, length, width }
  })

const overlap = (a: Lain, b: Lain): boolean =>
  a.x < b.x + b.length && b.x < a.x + a.length && a.y < b.y + b.width && b.y < a.y + a.width

/** Groups of pieces that no line in one direction can part: their ranges overlap. */
function groups(parts: readonly Lain[], start: 'x' | 'y', size: 'length' | 'width'): Lain[][] {
  const found: Lain[][] = []
  let reached = -Infinity
  for (const part of [...parts].sort((a, b) => a[start] - b[start])) {
    if (part[start] >= reached) found.push([])
    found.at(-1)?.push(part)
    reached = Math.max(reached, part[start] + part[size])
  }
  return found
}

/** Whether cuts from edge to edge take pieces apart: by recursion over full lines that go through none of them. */
export function comesApart(parts: readonly Lain[]): boolean {
  if (parts.length <= 1) return true
  const across = groups(parts, 'x', 'length')
  const along = groups(parts, 'y', 'width')
  const parted = across.length > 1 ? across : along
  return parted.length > 1 && parted.every(comesApart)
}

/** All that is wrong with one sheet: outside, overlapping, not to be sawn, against the grain, wrongly counted. */
export function sheetFaults(job: Job, sheet: Sheet): string[] {
  const { lengthUm, widthUm } = job.boards[sheet.board]!
  const parts = lainOn(job, sheet)
  const outside = parts.filter(
    ({ x, y, length, width }) => x < 0 || y < 0 || x + length > lengthUm || y + width > widthUm,
  )
  const crossing = parts.flatMap((a, i) => parts.slice(i + 1).filter((b) => overlap(a, b)))
  const wrongWay = sheet.pieces.filter(
    (piece, index) =>
      (job.ways[piece * job.boards.length + sheet.board]! & (sheet.turned[index] ? 2 : 1)) === 0,
  )
  const used = parts.reduce((sum, { length, width }) => sum + length * width, 0)
  return [
    ...outside.map((part) => `outside: ${JSON.stringify(part)}`),
    ...crossing.map((part) => `overlaps: ${JSON.stringify(part)}`),
    ...(comesApart(parts) ? [] : ['no cuts from edge to edge take it apart']),
    ...wrongWay.map((piece) => `piece ${piece} may not lie so`),
    ...(used === sheet.usedUm2 ? [] : [`used ${sheet.usedUm2}, counted ${used}`]),
  ]
}
