import { describe, expect, it } from 'vitest'
import { between, condensed } from '../../../src/core/as-built/condensed.ts'

/** 1000 Hz steps of a straight line in double logarithms: ohm = 2 (f/100)^0.5, phase 45 degrees. */
const frequencyHz = Float64Array.from({ length: 1000 }, (_, i) => 20 + i)
const sweep = {
  frequencyHz,
  ohm: frequencyHz.map((hz) => 2 * Math.sqrt(hz / 100)),
  phaseDeg: frequencyHz.map(() => 45),
}

describe('a condensed sweep', () => {
  it('has no more readings than asked for, in rising order, on the same line', () => {
    const few = condensed(sweep, 50)
    expect(few.frequencyHz.length).toBeLessThanOrEqual(50)
    expect(few.frequencyHz.length).toBeGreaterThan(30)
    few.frequencyHz.forEach((hz, i) => {
      if (i > 0) expect(hz).toBeGreaterThan(few.frequencyHz[i - 1]!)
      // Means of logarithms keep a power law exactly.
      expect(few.ohm[i]! / (2 * Math.sqrt(hz / 100))).toBeCloseTo(1, 10)
      expect(few.phaseDeg?.[i]).toBeCloseTo(45, 10)
    })
  })

  it('is the sweep itself when that is short enough, phase or not', () => {
    const bare = { ...sweep, phaseDeg: null }
    expect(condensed(bare, 1000)).toBe(bare)
    expect(condensed(bare, 10).phaseDeg).toBeNull()
  })
})

it('the part between two frequencies has both ends', () => {
  const part = between(sweep, 100, 110)
  expect([...part.frequencyHz]).toEqual([100, 101, 102, 103, 104, 105, 106, 107, 108, 109, 110])
  expect(part.ohm).toHaveLength(11)
  expect(part.phaseDeg).toHaveLength(11)
})
