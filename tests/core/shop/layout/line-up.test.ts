import { describe, expect, it } from 'vitest'
import { layout } from '../../../../src/core/shop/layout/layout.ts'
import { linedUp } from '../../../../src/core/shop/layout/line-up.ts'
import type { Rect } from '../../../../src/core/shop/layout/next-cut.ts'
import { randomFrom } from '../../../../src/core/shop/layout/random.ts'
import { fenceMoves, fenceSetting, separated } from '../../../../src/core/shop/layout/separate.ts'
import { comesApart } from './sheet-faults.ts'

const SEED = 8086

const rect = (xUm: number, yUm: number, lengthUm: number, widthUm: number): Rect => ({
  xUm,
  yUm,
  lengthUm,
  widthUm,
})

describe('the order of the cuts, by pencil', () => {
  it('three equal strips come from one setting of the fence, and the rest stays whole', () => {
    const strips = [rect(0, 0, 300, 500), rect(300, 0, 300, 500), rect(600, 0, 300, 500)]
    const { cuts, offcuts } = separated(rect(0, 0, 1000, 500), strips)
    expect(cuts.map(fenceSetting)).toEqual([300, 300, 300])
    expect(fenceMoves(cuts)).toBe(1)
    expect(offcuts).toEqual([rect(900, 0, 100, 500)])
  })

  it('two strips with the same parts: the fence stays where the other strip needs it', () => {
    // A part over the whole height between them: no cut along the board is possible first.
    const one = [rect(0, 0, 400, 200), rect(0, 200, 400, 150)]
    const other = [rect(650, 0, 350, 200), rect(650, 200, 350, 150)]
    const { cuts } = separated(rect(0, 0, 1000, 400), [...one, rect(400, 0, 250, 400), ...other])
    expect(cuts.map(fenceSetting)).toEqual([400, 250, 200, 200, 150, 150])
    expect(fenceMoves(cuts)).toBe(4)
  })

  it('a strip between two equal ones goes to the end: the fence is set twice instead of three times', () => {
    const parts = [rect(0, 0, 300, 500), rect(300, 0, 200, 500), rect(500, 0, 300, 500)]
    const board = rect(0, 0, 1000, 500)
    expect(fenceMoves(separated(board, parts).cuts)).toBe(3)
    const lined = linedUp(board, parts)
    expect(lined).toEqual([rect(0, 0, 300, 500), rect(600, 0, 200, 500), rect(300, 0, 300, 500)])
    expect(fenceMoves(separated(board, lined).cuts)).toBe(2)
  })

  it('empty strips on both sides of a part become one', () => {
    const board = rect(0, 0, 1000, 500)
    expect(linedUp(board, [rect(200, 0, 500, 500)])).toEqual([rect(0, 0, 500, 500)])
  })
})

describe(`layouts at random, seed ${SEED}`, () => {
  const random = randomFrom(SEED)
  const whole = (from: number, to: number) => from + Math.floor(random() * (to - from + 1))
  const board = { lengthMm: 1220, widthMm: 610, count: 20 }
  const bare = rect(0, 0, 1_220_000, 610_000)

  it('parts lined up in a mirrored layout keep their sizes, come apart, set the fence less often and leave no smaller offcut', () => {
    const moves = { before: 0, after: 0 }
    const largest = (parts: readonly Rect[]) =>
      Math.max(0, ...separated(bare, parts).offcuts.map(({ lengthUm, widthUm }) => lengthUm * widthUm))
    for (let run = 0; run < 15; run++) {
      const parts = Array.from({ length: whole(4, 15) }, () => ({
        lengthMm: 10 * whole(8, 50),
        widthMm: 10 * whole(6, 30),
        count: whole(1, 3),
      }))
      for (const sheet of layout(parts, [board], 0, 1e5).sheets) {
        // The engine lines up what it gives; mirrored, the empty strips come first and equal ones are in reverse order.
        const mirrored = sheet.parts.map(({ part, xUm, yUm, turned }) => {
          const { lengthMm, widthMm } = parts[part]!
          const [length, width] = turned ? [widthMm, lengthMm] : [lengthMm, widthMm]
          return rect(
            bare.lengthUm - xUm - 1000 * length,
            bare.widthUm - yUm - 1000 * width,
            1000 * length,
            1000 * width,
          )
        })
        const lined = linedUp(bare, mirrored)
        const plain = lined.map(({ xUm, yUm, lengthUm, widthUm }) => ({
          x: xUm,
          y: yUm,
          length: lengthUm,
          width: widthUm,
        }))
        expect(lined.map(({ lengthUm, widthUm }) => [lengthUm, widthUm])).toEqual(
          mirrored.map(({ lengthUm, widthUm }) => [lengthUm, widthUm]),
        )
        expect(comesApart(plain)).toBe(true)
        expect(
          plain.every(
            ({ x, y, length, width }) =>
              x >= 0 && y >= 0 && x + length <= bare.lengthUm && y + width <= bare.widthUm,
          ),
        ).toBe(true)
        expect(largest(lined)).toBeGreaterThanOrEqual(largest(mirrored))
        const [before, after] = [mirrored, lined].map((all) => fenceMoves(separated(bare, all).cuts))
        expect(after).toBeLessThanOrEqual(before!)
        moves.before += before!
        moves.after += after!
      }
    }
    expect(moves.after).toBeLessThan(moves.before)
  })
})
