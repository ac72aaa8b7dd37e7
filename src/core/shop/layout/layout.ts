import type { Part, Stock } from '../../../schema/shop.ts'
import { fewestBoards } from './bound.ts'
import { exactLayout, isSmall } from './exact.ts'
import { comparePackings, firstLayout } from './first-layout.ts'
import { cheaper } from './goal.ts'
import { improved } from './improve.ts'
import { type Job, jobsOf, waysOf } from './job.ts'
import { leastPrice } from './least-price.ts'
import { linedUp } from './line-up.ts'
import { type Packing, type Sheet, scoreOf } from './packing.ts'
import { byPatterns } from './patterns.ts'
import { settled } from './settle.ts'

/** A part on a board: positions from the trimmed corner, whole micrometres. */
export interface LaidPart {
  /** Index into the parts of the request. */
  part: number
  xUm: number
  yUm: number
  turned: boolean
}

/** One board of the stock with its parts. */
export interface LaidSheet {
  /** Index into the stock of the request. */
  stock: number
  parts: LaidPart[]
}

export interface Layout {
  sheets: LaidSheet[]
  /** How many of each part found no board; parts that are all placed do not appear. */
  notPlaced: Map<number, number>
  /** Fewest boards any layout could need; null when some part fits no board at all. */
  bound: number | null
}

/** Seed of the search: any whole number; the same one gives the same layout. */
const SEED = 20_011

/** Share of the work that repeats boards, where a layout takes so many boards for every different part. Measured. */
const WORK_ON_PATTERNS = 0.8
const BOARDS_A_PART = 2

const repeatsBoards = (job: Job, { sheets }: Packing): boolean =>
  sheets.length >= BOARDS_A_PART * new Set(job.partOf).size

/** Share of the other work that lays whole boards anew; the rest takes out single pieces. Measured on published instances. */
const WORK_ON_WHOLE_BOARDS = { severalKinds: 0.2, equalBoards: 0.5, manyPieces: 0.8 }
/** With more pieces than this single pieces gain little for their work. */
const MANY_PIECES = 200

function shareOnWholeBoards(job: Job): number {
  if (job.boards.length > 1) return WORK_ON_WHOLE_BOARDS.severalKinds
  return job.partOf.length > MANY_PIECES ? WORK_ON_WHOLE_BOARDS.manyPieces : WORK_ON_WHOLE_BOARDS.equalBoards
}

function laidOut(job: Job, fewest: number, work: number): Packing {
  const first = firstLayout(job)
  const score = scoreOf(job, first)
  const enough = leastPrice(job, fewest)
  if (score.leftUm2 === 0 && score.price <= enough) return first
  if (isSmall(job)) {
    const exact = exactLayout(job)
    const [known, best] = [scoreOf(job, first), scoreOf(job, exact)]
    const gain = known.leftUm2 - best.leftUm2 || known.price - best.price || known.boards - best.boards
    return gain > 0 ? settled(job, exact) : first
  }
  const onPatterns = repeatsBoards(job, first) ? WORK_ON_PATTERNS * work : 0
  const patterns = byPatterns(job, first, onPatterns, SEED, enough)
  const rest = work - onPatterns
  const whole = shareOnWholeBoards(job) * rest
  const boards = improved(job, patterns, whole, SEED, enough)
  const better = settled(job, cheaper(job, boards, rest - whole, SEED, enough))
  return comparePackings(job, better, first) < 0 ? better : first
}

/** A sheet of the search in terms of the request, with equal strips lined up. */
function laidSheet(job: Job, sheet: Sheet): LaidSheet {
  const { stock, lengthUm, widthUm } = job.boards[sheet.board]!
  const rects = sheet.pieces.map((piece, index) => {
    const [length, width] = [job.lengthUm[piece]!, job.widthUm[piece]!]
    const at = { xUm: sheet.xUm[index]!, yUm: sheet.yUm[index]! }
    return sheet.turned[index]
      ? { ...at, lengthUm: width, widthUm: length }
      : { ...at, lengthUm: length, widthUm: width }
  })
  const lined = linedUp({ xUm: 0, yUm: 0, lengthUm, widthUm }, rects)
  return {
    stock,
    parts: lined.map(({ xUm, yUm }, index) => ({
      part: job.partOf[sheet.pieces[index]!]!,
      xUm,
      yUm,
      turned: sheet.turned[index]!,
    })),
  }
}

function counted(parts: readonly number[]): Map<number, number> {
  const counts = new Map<number, number>()
  for (const part of parts) counts.set(part, (counts.get(part) ?? 0) + 1)
  return counts
}

/** Parts that no board takes at all, with all their pieces. */
function homeless(parts: readonly Part[], stock: readonly Stock[], kerfMm: number): number[] {
  return parts.flatMap((part, index) =>
    stock.some((board) => waysOf(part, board, kerfMm) > 0)
      ? []
      : Array.from({ length: part.count ?? 1 }, () => index),
  )
}

/**
 * Lays parts on the boards on hand with cuts from edge to edge only.
 * Wishes in order: every part placed; least stock (money when every board has a cost, else area), then fewest
 * boards; then the largest remainder in one piece. Never more boards than there are.
 * @param kerfMm  width of the saw cut
 * @param work    improvement, in pieces squared, after the first answer, for requests too large to be solved exactly;
 *                shared out by pieces among parts that meet different boards
 */
export function layout(
  parts: readonly Part[],
  stock: readonly Stock[],
  kerfMm: number,
  work: number,
): Layout {
  const without = homeless(parts, stock, kerfMm)
  const sheets: LaidSheet[] = []
  const left = [...without]
  let bound = 0
  const jobs = jobsOf(parts, stock, kerfMm)
  const pieces = jobs.reduce((sum, job) => sum + job.partOf.length, 0)
  for (const job of jobs) {
    const fewest = fewestBoards(job)
    bound += fewest
    const packing = laidOut(job, fewest, (work * job.partOf.length) / pieces)
    left.push(...packing.left.map((piece) => job.partOf[piece]!))
    sheets.push(...packing.sheets.map((sheet) => laidSheet(job, sheet)))
  }
  sheets.sort((a, b) => a.stock - b.stock)
  return { sheets, notPlaced: counted(left), bound: without.length > 0 ? null : bound }
}
