import { expect, it } from 'vitest'
import { contradiction } from '../../../src/core/driver/contradiction.ts'

// Definitions of R. H. Small 1972 at 20 °C, 101.325 kPa, 50%, evaluated by hand.
const GIVEN = { fsHz: 95, qms: 3.4, qes: 0.55, vasL: 2.1, sdCm2: 52, reOhm: 3.6 }
const QTS = (3.4 * 0.55) / 3.95

it('nothing contradicts a set without a second route', () => {
  expect(contradiction(GIVEN)).toBeNull()
})

it('rounding on a data sheet is no contradiction', () => {
  expect(contradiction({ ...GIVEN, qts: 0.47 })).toBeNull()
})

it('says what the others ask for and by how much it is off', () => {
  const found = contradiction({ ...GIVEN, qts: 0.52 })
  expect(found).toMatchObject({ field: 'qts', given: 0.52 })
  expect(found?.implied).toBeCloseTo(QTS, 9)
  expect(found?.share).toBeCloseTo(1 - QTS / 0.52, 9)
})

it.each([
  ['mmsG', { mmsG: 20 }],
  ['blTm', { blTm: 20 }],
  ['cmsMmPerN', { cmsMmPerN: 9 }],
] as const)('blames %s, without which the rest agree', (field, slip) => {
  expect(contradiction({ ...GIVEN, ...slip })?.field).toBe(field)
})
