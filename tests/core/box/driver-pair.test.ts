import { expect, it } from 'vitest'
import {
  lowestPairNullHz,
  pairLevelDb,
  pairNullHz,
  pairPowerOverTwoAlone,
} from '../../../src/core/box/driver-pair.ts'
import { checks, expectWithin } from '../../outside/checks.ts'

const pair = { spacingM: 0.08, speedMPerS: 344 }

// Pritchard 1960 (from memory), evaluated outside.
it.each(checks('radiation-checks.json', 'mutual-coupling'))('$id', (check) => {
  const { spacingMm, frequencyHz, speedOfSoundMPerS } = check.inputs
  const row = { spacingM: spacingMm / 1000, speedMPerS: speedOfSoundMPerS }
  expectWithin(check, 'radiatedPowerOverTwoAlone', pairPowerOverTwoAlone(row, frequencyHz))
  expectWithin(check, 'onAxisGainDb', pairLevelDb(row, frequencyHz, 0))
  expectWithin(check, 'gainAt60DegDb', pairLevelDb(row, frequencyHz, 60))
})

it('close together two drivers radiate twice the power of two alone', () => {
  expect(pairPowerOverTwoAlone(pair, 0)).toBe(2)
  expect(pairPowerOverTwoAlone(pair, 1)).toBeCloseTo(2, 5)
})

// The power is the mean of the squared far pressure over the half space: the integral, by the midpoint rule.
it.each([100, 1000, 2150, 4300, 12_000])('the directions add up to the power at %d Hz', (frequencyHz) => {
  const steps = 20_000
  let mean = 0
  for (let i = 0; i < steps; i++) {
    // Equal steps of the sine towards the line of the drivers are equal shares of the sphere (Archimedes).
    const angleDeg = (Math.asin((i + 0.5) / steps) * 180) / Math.PI
    mean += 10 ** (pairLevelDb(pair, frequencyHz, angleDeg)! / 10) / steps
  }
  expect(mean / 2).toBeCloseTo(pairPowerOverTwoAlone(pair, frequencyHz), 6)
})

it('at the null the two paths differ by half a wavelength', () => {
  for (const angleDeg of [10, 30, 60, 90]) {
    const nullHz = pairNullHz(pair, angleDeg)!
    expect((0.08 * Math.sin((angleDeg * Math.PI) / 180)) / (344 / nullHz)).toBeCloseTo(0.5, 12)
    expect(pairLevelDb(pair, nullHz, angleDeg)).toBeNull()
  }
})

it('no null on the axis, and none anywhere below half a wavelength of spacing', () => {
  expect(pairNullHz(pair, 0)).toBeNull()
  expect(lowestPairNullHz(pair)).toBeCloseTo(344 / 0.16, 9)
  expect(pairNullHz(pair, 90)).toBeCloseTo(lowestPairNullHz(pair), 9)
})
