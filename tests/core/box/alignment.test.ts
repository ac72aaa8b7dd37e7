import { describe, expect, it } from 'vitest'
import {
  bessel4,
  butterworth4,
  classicVented,
  nearestClosed,
  type VentedAlignment,
} from '../../../src/core/box/alignment.ts'
import { type Check, checks, expectWithin } from '../../outside/checks.ts'

function alignmentOf({ inputs }: Check): VentedAlignment | null {
  if (inputs['alignment'] === 'B4') return butterworth4(inputs['leakageQ'])
  if (inputs['alignment'] === 'Bessel 4th order') return bessel4(inputs['leakageQ'])
  return classicVented(inputs['qts'], inputs['leakageQ'])
}

// A. N. Thiele 1971, Table I; R. H. Small 1973; R. M. Bullock 1981: named in each row.
describe('published alignments', () => {
  it.each(checks('acoustics-checks.json', 'alignment-vented'))('$id', (check) => {
    const found = alignmentOf(check)
    for (const key of ['qts', 'h', 'alpha', 'f3OverFs'] as const)
      if (key in check.expected) expectWithin(check, key, found?.[key])
    if (check.inputs['qts'] !== undefined) expect(found?.name).toBe(check.inputs['alignment'])
  })
})

it('the families meet at the Butterworth driver', () => {
  const { qts } = butterworth4(7)
  expect(classicVented(qts, 7)?.name).toBe('B4')
  expect(classicVented(qts * 0.999, 7)?.alpha).toBeCloseTo(butterworth4(7).alpha, 1)
  expect(classicVented(qts * 1.001, 7)?.alpha).toBeCloseTo(butterworth4(7).alpha, 1)
})

it('a driver of very high Q has no classic vented box', () => {
  expect(classicVented(1.5, 7)).toBeNull()
})

it.each([
  [0.5, 'critically damped'],
  [0.72, 'Butterworth B2'],
  [1.3, 'Chebyshev C2, 1.25 dB'],
])('Qtc %f is nearest to %s', (qtc, name) => {
  expect(nearestClosed(qtc).name).toBe(name)
})
