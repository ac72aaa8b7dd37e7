import { RULES } from './first-layout.ts'
import { layGreedily } from './greedy.ts'
import type { Job } from './job.ts'
import { ORDER_COUNT, sortedPieces } from './order.ts'
import { compareScores, type Packing, type Sheet, scoreOf } from './packing.ts'
import { randomFrom } from './random.ts'

/** Boards laid at random of which the best is taken, in the first pass and at most; each pass twice as many. */
const FIRST_TRIES = 20
const MOST_TRIES = 160
/** Share of the kinds of piece that a try may lay, so that not every board begins with the largest. */
const KINDS_SHARE = 0.6
const ALL_KINDS_SHARE = 0.3
const SORT_NOISE = 0.7
/** Large pieces are worth more than their share of the area at first: they are harder to lay late. */
const FIRST_POWER = 1.03
/** How far a value goes towards what the board of the last pattern asked of its pieces. */
const CORRECTION = 0.7
/** Work of a try besides its pieces squared (measured). */
const TRY_WORK = 300

/** Equal pieces that are left to lay, and what one of them is held to be worth. */
interface Kind {
  pieces: number[]
  count: number
  areaUm2: number
  value: number
}

const pick = (count: number, random: () => number): number => Math.floor(random() * count)

/** Every kind with all its pieces, worth what its area costs on the board that is cheapest for its area. */
function kindsOf(job: Job): Kind[] {
  const [first] = job.areaUm2
  const priceOfArea = Math.min(
    ...job.boards.map(({ price, lengthUm, widthUm }) => price / (lengthUm * widthUm)),
  )
  const kinds = new Map<number, Kind>()
  job.partOf.forEach((part, piece) => {
    const areaUm2 = job.areaUm2[piece]!
    const value = priceOfArea * areaUm2 * (areaUm2 / (first ?? areaUm2)) ** (FIRST_POWER - 1)
    const kind = kinds.get(part) ?? { pieces: [], count: 0, areaUm2, value }
    kind.pieces.push(piece)
    kind.count++
    kinds.set(part, kind)
  })
  return [...kinds.values()]
}

/** Pieces left of some kinds or of all, of each no more than the area of a board holds. */
function candidates(kinds: readonly Kind[], boardUm2: number, random: () => number): number[] {
  const isFree = random() < ALL_KINDS_SHARE
  return kinds.flatMap(({ pieces, areaUm2 }) =>
    pieces.length > 0 && (isFree || random() < KINDS_SHARE)
      ? pieces.slice(0, Math.max(1, Math.floor(boardUm2 / areaUm2)))
      : [],
  )
}

/** State of a pass: pieces and boards left, and the work that may still be done. */
interface Pass {
  kinds: readonly Kind[]
  /** The kind of every piece. */
  kindOf: readonly Kind[]
  onHand: number[]
  work: number
}

/** Of some boards laid at random the one that holds most value for its price; undefined when nothing fits any more. */
function bestPattern(job: Job, pass: Pass, tries: number, random: () => number): Sheet | undefined {
  const some = pass.onHand.flatMap((count, board) => (count > 0 ? [board] : []))
  let best: Sheet | undefined
  let most = 0
  for (let count = 0; count < tries && some.length > 0 && pass.work > 0; count++) {
    const board = some[pick(some.length, random)]!
    const { lengthUm, widthUm, price } = job.boards[board]!
    const pieces = candidates(pass.kinds, lengthUm * widthUm, random)
    pass.work -= TRY_WORK + pieces.length ** 2
    const order = sortedPieces(job, pieces, pick(ORDER_COUNT, random), SORT_NOISE * random(), random)
    const one = job.boards.map((_, kind) => (kind === board ? 1 : 0))
    const [sheet] = layGreedily(job, order, [board], one, RULES[pick(RULES.length, random)]!).sheets
    if (sheet === undefined) continue
    const value = sheet.pieces.reduce((sum, piece) => sum + pass.kindOf[piece]!.value, 0) / price
    if (value > most) [best, most] = [sheet, value]
  }
  return best
}

/** How many pieces of each kind lie on a sheet. */
function countsOf(pass: Pass, sheet: Sheet): Map<Kind, number> {
  const counts = new Map<Kind, number>()
  for (const piece of sheet.pieces) {
    const kind = pass.kindOf[piece]!
    counts.set(kind, (counts.get(kind) ?? 0) + 1)
  }
  return counts
}

/** The same sheet as often as pieces and boards are left for it, each with pieces of its own. */
function repeated(pass: Pass, pattern: Sheet): Sheet[] {
  const counts = countsOf(pass, pattern)
  const times = [...counts].reduce(
    (least, [kind, count]) => Math.min(least, Math.floor(kind.pieces.length / count)),
    pass.onHand[pattern.board]!,
  )
  pass.onHand[pattern.board]! -= times
  const kindsLain = pattern.pieces.map((piece) => pass.kindOf[piece]!)
  return Array.from({ length: times }, () => ({
    ...pattern,
    pieces: kindsLain.map((kind) => kind.pieces.pop()!),
  }))
}

/** Values go towards the share of the price that a kind took on the boards it came to lie on. */
function correct(pass: Pass, pattern: Sheet, times: number, price: number) {
  for (const [kind, count] of countsOf(pass, pattern)) {
    const asked = (price * kind.areaUm2) / pattern.usedUm2
    kind.value += CORRECTION * ((times * count) / kind.count) * (asked - kind.value)
  }
}

/** Lays all pieces, pattern by pattern, as far as boards and work suffice. */
function laidByPatterns(job: Job, pass: Pass, tries: number, random: () => number): Packing {
  const sheets: Sheet[] = []
  while (pass.kinds.some(({ pieces }) => pieces.length > 0)) {
    const pattern = bestPattern(job, pass, tries, random)
    if (pattern === undefined) break
    const same = repeated(pass, pattern)
    sheets.push(...same)
    correct(pass, pattern, same.length, job.boards[pattern.board]!.price)
  }
  return { sheets, left: pass.kinds.flatMap(({ pieces }) => pieces) }
}

/**
 * Fills one board after the other as well as can be and repeats each as often as pieces are left, again and again with
 * the pieces valued by what their boards cost the time before; gives the best of it and of a start. Finds what the
 * other searches miss where there are many equal pieces.
 * Source: sequential value correction: G. Belov & G. Scheithauer, INFORMS J. Computing 19, 2007, from memory; boards by
 * random greedy laying instead of a dynamic programme.
 * @param work    how much to try, in pieces squared; the same work and seed give the same layout
 * @param enough  price below which nothing can be (stop there)
 */
export function byPatterns(job: Job, start: Packing, work: number, seed: number, enough: number): Packing {
  const random = randomFrom(seed)
  const kinds = kindsOf(job)
  const all = kinds.map(({ pieces }) => pieces)
  const kindOf: Kind[] = []
  for (const kind of kinds) for (const piece of kind.pieces) kindOf[piece] = kind
  let best = start
  let score = scoreOf(job, start)
  let left = work
  for (let tries = FIRST_TRIES; left > 0; tries = Math.min(MOST_TRIES, 2 * tries)) {
    if (score.leftUm2 === 0 && score.price <= enough) return best
    kinds.forEach((kind, index) => {
      kind.pieces = [...all[index]!]
    })
    const pass = { kinds, kindOf, onHand: job.boards.map(({ count }) => count), work: left }
    const packing = laidByPatterns(job, pass, tries, random)
    left = pass.work
    const now = scoreOf(job, packing)
    if (compareScores(now, score) < 0) [best, score] = [packing, now]
  }
  return best
}
