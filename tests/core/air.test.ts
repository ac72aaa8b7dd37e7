import { expect, it } from 'vitest'
import { airDensityKgPerM3, airOf, dryAirSpeedMPerS, speedOfSoundMPerS } from '../../src/core/air.ts'
import { checks, expectWithin } from '../outside/checks.ts'

const AIR = checks('acoustics-checks.json', 'air')

// O. Cramer 1993, A. Picard 2008, ISO 9613-1: named in each row.
it.each(AIR)('$id', (check) => {
  const { temperatureC, pressureKpa, humidityPct } = check.inputs
  if ('densityKgPerM3' in check.expected)
    expectWithin(check, 'densityKgPerM3', airDensityKgPerM3(temperatureC, pressureKpa, humidityPct))
  else if (pressureKpa === undefined) expectWithin(check, 'speedOfSoundMPerS', dryAirSpeedMPerS(temperatureC))
  else expectWithin(check, 'speedOfSoundMPerS', speedOfSoundMPerS(temperatureC, pressureKpa, humidityPct))
})

it('compares every published row', () => {
  expect(AIR).toHaveLength(7)
})

it('takes given speed and density as they stand', () => {
  expect(airOf({ speedMPerS: 340, densityKgPerM3: 1.2 })).toEqual({ speedMPerS: 340, densityKgPerM3: 1.2 })
})

it("is the contract's reference air when nothing is said", () => {
  // The contract: 20 °C, 101.325 kPa, 50% are c = 343.994 m/s and 1.19931 kg/m³.
  const air = airOf(undefined)
  expect(air.speedMPerS).toBeCloseTo(343.994, 2)
  expect(air.densityKgPerM3).toBeCloseTo(1.19931, 5)
})
