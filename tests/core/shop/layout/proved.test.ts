import highsLoader, { type Highs } from 'highs'
import { describe, expect, it } from 'vitest'
import { fewestBoards } from '../../../../src/core/shop/layout/bound.ts'
import { cheaper } from '../../../../src/core/shop/layout/goal.ts'
import { jobsOf } from '../../../../src/core/shop/layout/job.ts'
import { layout } from '../../../../src/core/shop/layout/layout.ts'
import { leastPrice } from '../../../../src/core/shop/layout/least-price.ts'
import { scoreOf } from '../../../../src/core/shop/layout/packing.ts'
import { randomFrom } from '../../../../src/core/shop/layout/random.ts'
import { publishedSample } from '../../../outside/cutting/instances.ts'
import { sheetFaults } from './sheet-faults.ts'

// Both packages say another module format than they have.
const loadHighs = highsLoader as unknown as () => Promise<Highs>
const PACKER: string = 'maxrects-packer/dist/maxrects-packer.mjs'
const { MaxRectsPacker, PACKING_LOGIC }: typeof import('maxrects-packer') = await import(PACKER)

const SEED = 20_261_125
const WORK = 4e6

type Size = readonly [number, number]

const isSingle = (set: number): boolean => (set & (set - 1)) === 0

const fitsIn = ([l, w]: Size, [long, wide]: Size): boolean => l <= long && w <= wide

/** Boxes of which none holds another. */
const least = (boxes: readonly Size[]): Size[] =>
  boxes.filter((box, i) => !boxes.some((other, j) => fitsIn(other, box) && (!fitsIn(box, other) || j < i)))

/** Smallest boxes that hold a set of parts with cuts from edge to edge: every way to part it in two, side by side or stacked. */
function boxesOf(parts: readonly Size[]): (set: number) => Size[] {
  const known = new Map<number, Size[]>()
  const together = (one: number, other: number): Size[] =>
    boxes(one).flatMap(([la, wa]) =>
      boxes(other).flatMap(([lb, wb]): Size[] => [
        [la + lb, Math.max(wa, wb)],
        [Math.max(la, lb), wa + wb],
      ]),
    )
  const boxes = (set: number): Size[] => {
    const found = known.get(set) ?? []
    if (found.length > 0) return found
    const [length, width] = parts[Math.log2(set)] ?? [0, 0]
    if (isSingle(set)) found.push([length, width], [width, length])
    for (let half = (set - 1) & set; half > 0; half = (half - 1) & set)
      found.push(...together(half, set ^ half))
    known.set(set, least(found))
    return least(found)
  }
  return boxes
}

/** Least price of boards by an exact model: choose sets of parts, each from one kind of board, that hold every part once. */
async function provedPrice(
  parts: readonly Size[],
  boards: readonly { size: Size; price: number; count: number }[],
) {
  const highs = await loadHighs()
  const boxes = boxesOf(parts)
  const names: { name: string; set: number; board: number }[] = []
  for (let set = 1; set < 2 ** parts.length; set++)
    for (const [board, { size }] of boards.entries())
      if (boxes(set).some((box) => fitsIn(box, size))) names.push({ name: `x${set}_${board}`, set, board })
  const rowOf = (fits: (one: (typeof names)[number]) => boolean) =>
    names
      .filter(fits)
      .map(({ name }) => name)
      .join(' + ')
  const lines = [
    'Minimize',
    ` cost: ${names.map(({ name, board }) => `${boards[board]!.price} ${name}`).join(' + ')}`,
    'Subject To',
    ...parts.map((_, part) => ` p${part}: ${rowOf(({ set }) => (set & (1 << part)) !== 0)} = 1`),
    ...boards.map(({ count }, index) => ` b${index}: ${rowOf(({ board }) => board === index)} <= ${count}`),
    'Binary',
    ...names.map(({ name }) => ` ${name}`),
    'End',
  ]
  const { Status, ObjectiveValue } = highs.solve(lines.join('\n'))
  return Status === 'Optimal' ? Math.round(ObjectiveValue) : null
}

describe(`small cases, proved by an exact model in an integer programme, seed ${SEED}`, () => {
  const random = randomFrom(SEED)
  const whole = (from: number, to: number) => from + Math.floor(random() * (to - from + 1))
  const cases = Array.from({ length: 12 }, (_, index) => ({
    index,
    parts: Array.from({ length: whole(4, 7) }, (): Size => [whole(2, 8), whole(2, 8)]),
    boards: Array.from({ length: 1 + (index % 3) }, () => ({
      size: [whole(8, 12), whole(8, 12)] as Size,
      price: whole(3, 9),
      count: 3,
    })),
  }))

  it.each(cases)(
    'case $index is as cheap as can be, and the bound is not above',
    async ({ parts, boards }) => {
      const price = await provedPrice(parts, boards)
      const laid = layout(
        parts.map(([lengthMm, widthMm]) => ({ lengthMm, widthMm })),
        boards.map(({ size, price: cost, count }) => ({ lengthMm: size[0], widthMm: size[1], cost, count })),
        0,
        WORK,
      )
      expect(price).not.toBeNull()
      expect(laid.notPlaced.size).toBe(0)
      expect(laid.sheets.reduce((sum, { stock }) => sum + boards[stock]!.price, 0)).toBe(price)
      expect(laid.bound).toBeLessThanOrEqual(laid.sheets.length)
    },
  )

  it.each(cases)(
    'case $index: the search by single pieces comes to the same price from nothing, and the least price is not above',
    async ({ parts, boards }) => {
      const price = await provedPrice(parts, boards)
      const jobs = jobsOf(
        parts.map(([lengthMm, widthMm]) => ({ lengthMm, widthMm })),
        boards.map(({ size, price: cost, count }) => ({ lengthMm: size[0], widthMm: size[1], cost, count })),
        0,
      )
      const packings = jobs.map((job) => {
        const nothing = { sheets: [], left: [...job.partOf.keys()] }
        return { job, packing: cheaper(job, nothing, WORK, SEED, 0) }
      })
      const least = jobs.reduce((sum, job) => sum + leastPrice(job, fewestBoards(job)), 0)
      // Jobs count money in millionths.
      expect(least).toBeLessThanOrEqual(1e6 * (price ?? 0))
      for (const { job, packing } of packings) {
        expect(packing.sheets.flatMap((sheet) => sheetFaults(job, sheet))).toEqual([])
        expect(packing.sheets.flatMap(({ pieces }) => pieces).sort((a, b) => a - b)).toEqual([
          ...job.partOf.keys(),
        ])
        job.boards.forEach(({ count }, kind) => {
          expect(packing.sheets.filter(({ board }) => board === kind).length).toBeLessThanOrEqual(count)
        })
      }
      expect(packings.reduce((sum, { job, packing }) => sum + scoreOf(job, packing).price, 0)).toBe(
        1e6 * (price ?? 0),
      )
    },
  )
})

describe('beside a general packing library that may place freely', () => {
  it('the layouts with cuts from edge to edge take no more sheets over the whole sample', () => {
    const totals = { ours: 0, library: 0 }
    for (const { parts, sheet } of publishedSample()) {
      const [width, height] = sheet
      const packer = new MaxRectsPacker(width, height, 0, {
        smart: false,
        pot: false,
        square: false,
        allowRotation: true,
        logic: PACKING_LOGIC.MAX_AREA,
      })
      for (const [length, wide] of parts) packer.add(length, wide, null)
      totals.library += packer.bins.length
      totals.ours += layout(
        parts.map(([lengthMm, widthMm]) => ({ lengthMm, widthMm })),
        [{ lengthMm: width, widthMm: height, count: 1000 }],
        0,
        WORK,
      ).sheets.length
    }
    expect(totals.ours).toBeLessThanOrEqual(totals.library)
  })
})
