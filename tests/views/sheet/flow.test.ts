import { describe, expect, it } from 'vitest'
import { flowed, type Piece } from '../../../src/views/sheet/paper/flow.ts'

const ROOM = 100

const piece = (heightPt: number, more: Partial<Piece> = {}): Piece => ({
  heightPt,
  gapPt: 0,
  draw: () => undefined,
  ...more,
})
const heading = (): Piece => piece(10, { keepWithNext: true, gapPt: 5 })

/** Numbers from 0 to 1, the same for the same seed. Park and Miller 1988, from memory. */
function random(seed: number): () => number {
  let state = seed
  return () => {
    state = (state * 48_271) % 2_147_483_647
    return state / 2_147_483_647
  }
}

describe('the flow of a text over its pages', () => {
  it('begins a page where the next piece would not fit', () => {
    const pages = flowed([piece(60), piece(40), piece(1)], ROOM)
    expect(pages.map((page) => page.map(({ yPt }) => yPt))).toEqual([[0, 60], [0]])
  })

  it('takes a heading along to the piece that it stands over', () => {
    const [first, second] = [heading(), piece(30)]
    const pages = flowed([piece(70), first, second], ROOM)
    expect(pages[1]?.map((placed) => placed.piece)).toEqual([first, second])
    // Air above a heading is of no use at the top of a page.
    expect(pages[1]?.[0]?.yPt).toBe(0)
  })

  it('repeats the head of a table on every page that it runs on to', () => {
    const head = piece(10)
    const rows = Array.from({ length: 12 }, () => piece(20, { head }))
    const pages = flowed([head, ...rows], ROOM)
    // With 10 for the head a page takes four rows of 20.
    expect(pages.map((page) => page.length)).toEqual([5, 5, 5])
    for (const page of pages) {
      expect(page[0]?.piece).toBe(head)
      expect(page[1]?.yPt).toBe(10)
    }
  })

  it('does not look for a place that no page has', () => {
    const pages = flowed([heading(), piece(95), piece(10)], ROOM)
    expect(pages.map((page) => page.length)).toEqual([1, 1, 1])
  })

  const seed = 7_411
  it(`loses no piece, leaves no heading alone and nothing beyond the foot (seed ${seed})`, () => {
    const next = random(seed)
    for (let round = 0; round < 200; round++) {
      const pieces = Array.from({ length: 1 + Math.floor(40 * next()) }, () =>
        next() < 0.2 ? heading() : piece(1 + 60 * next(), { gapPt: 8 * next() }),
      )
      pieces.push(piece(5))
      const pages = flowed(pieces, ROOM)
      expect(pages.flat().map((placed) => placed.piece)).toEqual(pieces)
      const ends = pages.map((page) => page.at(-1)!)
      for (const { piece: last, yPt } of ends) expect(yPt + last.heightPt).toBeLessThanOrEqual(ROOM + 1e-9)
      // Three headings in a row over the tallest piece are more than a page takes: 3 × 15 + 61 + 8 of 100.
      const alone = ends.filter(({ piece: last }) => last.keepWithNext === true)
      expect(alone.length === 0 || longestRun(pieces) > 2).toBe(true)
    }
  })
})

const longestRun = (pieces: readonly Piece[]): number => {
  let [run, most] = [0, 0]
  for (const { keepWithNext = false } of pieces) {
    run = keepWithNext ? run + 1 : 0
    most = Math.max(most, run)
  }
  return most
}
