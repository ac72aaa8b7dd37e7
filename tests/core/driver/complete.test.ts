import { describe, expect, it } from 'vitest'
import { completeDriver } from '../../../src/core/driver/complete.ts'

// Definitions of R. H. Small 1972 evaluated by hand at 20 °C, 101.325 kPa, 50%: ρc² = 1.4192e5 Pa.
const RHO_C2 = 1.19931 * 343.994 ** 2
const GIVEN = { fsHz: 95, qms: 3.4, qes: 0.55, vasL: 2.1, sdCm2: 52, reOhm: 3.6, leMh: 0.12 }
const sd = 52e-4
const cms = 2.1e-3 / (RHO_C2 * sd ** 2)
const mms = 1 / ((2 * Math.PI * 95) ** 2 * cms)
const bl = Math.sqrt((2 * Math.PI * 95 * mms * 3.6) / 0.55)

const complete = (parameters: Parameters<typeof completeDriver>[0]) => {
  const result = completeDriver(parameters, '/driver')
  if ('faults' in result) throw new Error(JSON.stringify(result.faults))
  return result
}
const faultsOf = (parameters: Parameters<typeof completeDriver>[0]) => {
  const result = completeDriver(parameters, '/driver')
  return 'faults' in result ? result.faults.map((fault) => fault.at) : []
}

it('completes the usual six', () => {
  const { driver } = complete(GIVEN)
  expect(driver.cmsMmPerN).toBeCloseTo(cms * 1e3, 5)
  expect(driver.mmsG / (mms * 1e3)).toBeCloseTo(1, 4)
  expect(driver.blTm / bl).toBeCloseTo(1, 4)
  expect(driver.qts).toBeCloseTo((3.4 * 0.55) / 3.95, 12)
})

describe('any sufficient part completes the rest', () => {
  const full = { mmsG: mms * 1e3, cmsMmPerN: cms * 1e3, blTm: bl, rmsKgPerS: (2 * Math.PI * 95 * mms) / 3.4 }
  it.each([
    [
      'mass and compliance for fs and Vas',
      { mmsG: full.mmsG, cmsMmPerN: full.cmsMmPerN, qms: 3.4, qes: 0.55, sdCm2: 52, reOhm: 3.6 },
    ],
    ['motor strength for Qes', { fsHz: 95, vasL: 2.1, sdCm2: 52, reOhm: 3.6, qms: 3.4, blTm: bl }],
    [
      'resistance for Qms',
      { fsHz: 95, vasL: 2.1, sdCm2: 52, reOhm: 3.6, qes: 0.55, rmsKgPerS: full.rmsKgPerS },
    ],
    ['total Q for Qes', { fsHz: 95, vasL: 2.1, sdCm2: 52, reOhm: 3.6, qms: 3.4, qts: (3.4 * 0.55) / 3.95 }],
    ['mass for compliance', { fsHz: 95, mmsG: full.mmsG, sdCm2: 52, reOhm: 3.6, qms: 3.4, qes: 0.55 }],
  ])('%s', (_, parameters) => {
    const { driver } = complete(parameters)
    for (const name of ['fsHz', 'qms', 'qes', 'vasL', 'reOhm'] as const)
      expect(driver[name] / GIVEN[name]).toBeCloseTo(1, 4)
  })
})

it('assumes a usual Qms and no inductance, and says so', () => {
  const { assumptions } = complete({ fsHz: 95, qes: 0.55, vasL: 2.1, sdCm2: 52, reOhm: 3.6 })
  expect(assumptions.map((row) => row.at)).toEqual(['/driver/qms', '/driver/leMh'])
})

it('refuses what decides the result, every parameter by name', () => {
  expect(faultsOf({ fsHz: 95 })).toEqual(['/driver/qes', '/driver/vasL', '/driver/sdCm2', '/driver/reOhm'])
})

it('refuses a total Q above either of its parts', () => {
  expect(faultsOf({ ...GIVEN, qts: 0.6 })).toEqual(['/driver/qts'])
  expect(faultsOf({ ...GIVEN, qts: 4 })).toEqual(['/driver/qts', '/driver/qts'])
})
