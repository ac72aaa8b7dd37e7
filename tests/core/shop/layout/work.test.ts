import { expect, it } from 'vitest'
import { isSmall } from '../../../../src/core/shop/layout/exact.ts'
import { roundWork } from '../../../../src/core/shop/layout/improve.ts'
import { jobsOf } from '../../../../src/core/shop/layout/job.ts'

/** A job of equal pieces on boards of so many kinds. */
function jobOf(pieces: number, kinds: number) {
  const stock = Array.from({ length: kinds }, (_, kind) => ({ lengthMm: 500 + kind, widthMm: 300 }))
  const [job] = jobsOf([{ lengthMm: 100, widthMm: 80, count: pieces }], stock, 2)
  if (job === undefined) throw new Error('no job')
  return job
}

it('more kinds, boards and pieces all make a round dearer, so that fewer rounds are tried', () => {
  const of = (pieces: number, kinds: number, kept: number) => roundWork(jobOf(1, kinds), pieces, kept)
  expect(of(20, 50, 5)).toBeGreaterThan(2 * of(20, 1, 5))
  expect(of(20, 1, 500)).toBeGreaterThan(2 * of(20, 1, 5))
  // Each piece is tried in every place that the others leave: twice the pieces, three times the more.
  expect(of(200, 1, 5) - of(100, 1, 5)).toBe(3 * 100 ** 2)
})

// 3^9 ways to split nine pieces in two and again for each board: the time goes with kinds and boards of a kind.
it.each([
  [9, 2, true],
  [9, 3, false],
  [8, 4, true],
  [8, 5, false],
  [7, 8, true],
  [7, 9, false],
  [10, 1, false],
])('%d pieces on %d kinds of board are solved exactly: %s', (pieces, kinds, expected) => {
  expect(isSmall(jobOf(pieces, kinds))).toBe(expected)
})
