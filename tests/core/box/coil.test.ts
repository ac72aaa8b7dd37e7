import { expect, it } from 'vitest'
import { coilImpedance } from '../../../src/core/box/coil.ts'
import { checks, expectWithin } from '../../outside/checks.ts'

// W. M. Leach 2002: named in the row, which states K itself; ours states the inductance at 1 kHz.
it.each(checks('acoustics-checks.json', 'voice-coil'))('$id', (check) => {
  const { n, frequencyHz } = check.inputs
  const { re, im } = coilImpedance(
    check.expected['equivalentSeriesInductanceMh'] / 1000,
    n,
    Float64Array.of(frequencyHz),
  )
  expectWithin(check, 'resistivePartOhm', re[0])
  expectWithin(check, 'reactivePartOhm', im[0])
})

it('an exponent of 1 is a plain inductance', () => {
  const { re, im } = coilImpedance(1e-3, 1, Float64Array.of(100, 10_000))
  expect(Array.from(re)).toEqual([0, 0])
  // X = 2πfL.
  expect(im[1]).toBeCloseTo(2 * Math.PI * 10, 9)
})

it('the eddy-current limit grows with the root of frequency at 45 degrees', () => {
  // J. Vanderkooy 1989: (jω)^½.
  const { re, im } = coilImpedance(1e-3, 0.5, Float64Array.of(1000, 4000))
  expect(re[0]).toBeCloseTo(im[0]!, 12)
  expect(im[1]! / im[0]!).toBeCloseTo(2, 12)
})
