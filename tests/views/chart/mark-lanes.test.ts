import fc from 'fast-check'
import { expect, it } from 'vitest'
import { markLanes } from '../../../src/views/chart/mark-lanes.ts'
import { textWidth } from '../../../src/views/chart/text-width.ts'

const RIGHT = 600
const SIZE = 12
const mark = fc.record({
  x: fc.integer({ min: 66, max: RIGHT }),
  text: fc.stringMatching(/^[a-z]{2,8} \d{2,4} Hz$/),
})

it('no text covers another, and none leaves the picture on the right', () => {
  fc.assert(
    fc.property(fc.array(mark, { maxLength: 9 }), (marks) => {
      const placed = markLanes(marks, RIGHT, SIZE)
      expect(placed).toHaveLength(marks.length)
      for (const [index, a] of placed.entries()) {
        expect(a.textX + textWidth(a.text, SIZE)).toBeLessThanOrEqual(RIGHT)
        for (const b of placed.slice(index + 1))
          if (a.lane === b.lane)
            expect(
              a.textX + textWidth(a.text, SIZE) < b.textX || b.textX + textWidth(b.text, SIZE) < a.textX,
            ).toBe(true)
      }
    }),
    { seed: 7 },
  )
})

it('nor covers the line of another where all find room on the right', () => {
  fc.assert(
    fc.property(fc.array(mark, { maxLength: 9 }), (marks) => {
      const placed = markLanes(marks, RIGHT + 200, SIZE)
      for (const low of placed)
        for (const high of placed)
          if (high.lane > low.lane)
            expect(high.x > low.textX && high.x < low.textX + textWidth(low.text, SIZE)).toBe(false)
    }),
    { seed: 7 },
  )
})

it('three marks close together take three lanes, far apart one', () => {
  const lanes = (...at: number[]) =>
    markLanes(
      at.map((x) => ({ x, text: 'f3 98 Hz' })),
      RIGHT,
      SIZE,
    ).map(({ lane }) => lane)
  expect(lanes(100, 110, 120)).toEqual([0, 1, 2])
  expect(lanes(100, 250, 400)).toEqual([0, 0, 0])
})
