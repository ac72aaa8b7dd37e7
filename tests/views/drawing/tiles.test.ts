import fc from 'fast-check'
import { expect, it } from 'vitest'
import type { Point } from '../../../src/views/drawing/drawing.ts'
import { registerMarks } from '../../../src/views/drawing/register-marks.ts'
import { tiling } from '../../../src/views/drawing/tiles.ts'

const SEED = 20_261_125
const size = fc.double({ min: 5, max: 3000, noNaN: true })
const room = fc.record({
  lengthMm: fc.double({ min: 60, max: 300, noNaN: true }),
  widthMm: fc.double({ min: 60, max: 300, noNaN: true }),
})

it('covers every point of the thing, and takes no more sheets than it needs', () => {
  fc.assert(
    fc.property(
      size,
      size,
      room,
      fc.double({ min: 0, max: 1, noNaN: true }),
      (lengthMm, widthMm, paper, share) => {
        const { tiles, columns, rows } = tiling({ xMm: -1, yMm: 2, lengthMm, widthMm }, paper)
        const [x, y] = [-1 + share * lengthMm, 2 + (1 - share) * widthMm]
        const seen = tiles.some(
          ({ window }) =>
            x >= window.xMm - 1e-6 &&
            x <= window.xMm + window.lengthMm + 1e-6 &&
            y >= window.yMm - 1e-6 &&
            y <= window.yMm + window.widthMm + 1e-6,
        )
        expect(seen).toBe(true)
        expect(tiles).toHaveLength(columns * rows)
        // One sheet less would not cover it even without any overlap to spare.
        if (columns > 1)
          expect((columns - 1) * paper.lengthMm - (columns - 2) * 12).toBeLessThan(lengthMm + 1e-6)
        expect(new Set(tiles.map(({ name }) => name)).size).toBe(tiles.length)
      },
    ),
    { seed: SEED },
  )
})

it('gives neighbours the same marks where they overlap', () => {
  // Three by two sheets of 190 x 250 mm that overlap by 12 mm.
  const plan = tiling({ xMm: 0, yMm: 0, lengthMm: 500, widthMm: 400 }, { lengthMm: 190, widthMm: 250 })
  expect([plan.columns, plan.rows]).toEqual([3, 2])
  const rings = (index: number): Point[] =>
    registerMarks(plan.tiles[index]!, plan).flatMap((shape) => (shape.kind === 'circle' ? [shape.at] : []))
  const shared = (one: number, other: number) =>
    rings(one).filter((a) => rings(other).some((b) => Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm) < 1e-9))
  expect(plan.tiles.map(({ name }) => name)).toEqual(['A1', 'A2', 'A3', 'B1', 'B2', 'B3'])
  // Beside each other and one above the other: two marks; across a corner or apart: none.
  expect(shared(0, 1)).toHaveLength(2)
  expect(shared(0, 3)).toHaveLength(2)
  expect(shared(0, 2)).toHaveLength(0)
  expect(shared(0, 4)).toHaveLength(0)
})
