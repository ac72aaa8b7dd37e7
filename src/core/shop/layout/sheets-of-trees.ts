import { boardsOpen, type CutTrees, PIECE, SPARE } from './cut-tree.ts'
import type { Job } from './job.ts'
import type { Sheet } from './packing.ts'

/** Lays what is below a node on the sheet, from its corner on. */
function lay(t: CutTrees, job: Job, node: number, xUm: number, yUm: number, sheet: Sheet) {
  if (t.what[node] === SPARE) {
    sheet.freeUm2 = Math.max(sheet.freeUm2, t.length[node]! * t.width[node]!)
  } else if (t.what[node] === PIECE) {
    const piece = t.piece[node]!
    sheet.pieces.push(piece)
    sheet.xUm.push(xUm)
    sheet.yUm.push(yUm)
    sheet.turned.push(t.turned[node] === 1)
    sheet.usedUm2 += job.areaUm2[piece]!
  } else {
    let [x, y] = [xUm, yUm]
    const children: number[] = []
    for (let child = t.first[node]!; child >= 0; child = t.next[child]!) children.push(child)
    // What is spare lies last, so that pieces start at the trimmed corner.
    children.sort((a, b) => Number(t.what[a] === SPARE) - Number(t.what[b] === SPARE))
    for (const child of children) {
      lay(t, job, child, x, y, sheet)
      if (t.across[node] === 1) x += t.length[child]!
      else y += t.width[child]!
    }
  }
}

/** The boards with pieces on them that the cut trees stand for. */
export function sheetsOf(t: CutTrees, job: Job): Sheet[] {
  return Array.from(t.roots.subarray(0, boardsOpen(t)))
    .filter((root) => t.what[root] !== SPARE)
    .map((root) => {
      const sheet = {
        board: t.board[root]!,
        pieces: [],
        xUm: [],
        yUm: [],
        turned: [],
        usedUm2: 0,
        freeUm2: 0,
      }
      lay(t, job, root, 0, 0, sheet)
      return sheet
    })
}
