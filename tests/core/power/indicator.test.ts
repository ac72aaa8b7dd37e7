import { expect, test } from 'vitest'
import {
  indicatorCurrentMa,
  indicatorDissipationMw,
  indicatorResistor,
} from '../../../src/core/power/indicator.ts'
import { E12, E24, nearestPreferred, nextNotBelow } from '../../../src/core/power/preferred-values.ts'
import { holdRows } from './hold-rows.ts'

holdRows('indicator', {
  'indicator-': ({ supplyVoltageV, forwardV, currentMa }) => {
    const resistor = indicatorResistor(supplyVoltageV, forwardV, currentMa)
    const e24Ohm = resistor?.e24Ohm ?? Number.NaN
    return {
      ...resistor,
      actualMa: indicatorCurrentMa(supplyVoltageV, forwardV, e24Ohm),
      dissipationMw: indicatorDissipationMw(supplyVoltageV, forwardV, e24Ohm),
    }
  },
  'e-series-counts': () => ({
    e12: E12.length,
    e24: E24.length,
  }),
  'e-nearest-': ({ exactOhm }) => ({
    e12Ohm: nearestPreferred(exactOhm, E12),
    e24Ohm: nearestPreferred(exactOhm, E24),
  }),
})

test('680 ohm gives a red indicator on 5 V about 4.4 mA (common practice)', () => {
  expect(indicatorCurrentMa(5, 2, 680)).toBeCloseTo(4.4, 1)
})

test('a supply at the forward voltage lights nothing', () => {
  expect(indicatorResistor(2, 2, 3)).toBeNull()
  expect(indicatorResistor(2.1, 2, 3)).not.toBeNull()
})

test('a value of the series is its own next value, in every decade', () => {
  for (const decade of [0.1, 1, 10, 100, 1000, 100_000])
    for (const value of E24) expect(nextNotBelow(value * decade, E24) / (value * decade)).toBeCloseTo(1, 12)
})
