import { expect, it } from 'vitest'
import {
  breakUpFrequencyHz,
  FALL_X,
  fallFrequencyHz,
  pistonLevelDb,
  pistonX,
} from '../../../src/core/box/directivity.ts'
import { checks, expectWithin } from '../../outside/checks.ts'

const rows = checks('radiation-checks.json', 'directivity')

// Beranek 1954 (from memory), evaluated outside.
it.each(rows.filter((check) => 'angleDeg' in check.inputs))('$id', (check) => {
  const { pistonRadiusMm, frequencyHz, angleDeg, speedOfSoundMPerS } = check.inputs
  const x = pistonX(pistonRadiusMm / 1000, frequencyHz, angleDeg, speedOfSoundMPerS)
  expectWithin(check, 'x', x)
  expectWithin(check, 'levelDb', pistonLevelDb(x))
})

/** x below the first null where the level has fallen to `levelDb`, by halving. */
function xAtLevel(levelDb: number): number {
  let [low, high] = [0, 3.8]
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2
    if (pistonLevelDb(middle)! > levelDb) low = middle
    else high = middle
  }
  return low
}

// The row takes half power (3.0103 dB) for 3 dB but 6.0000 dB for 6 dB; our 6 dB is half pressure (6.0206 dB).
it.each(rows.filter((check) => check.id === 'directivity-landmarks'))('$id', (check) => {
  expectWithin(check, 'xMinus3Db', FALL_X.minus3Db)
  expectWithin(check, 'xMinus6Db', xAtLevel(-6))
  expectWithin(check, 'xFirstNull', FALL_X.firstNull)
})

it('the landmarks lie at half power, half pressure and silence', () => {
  expect(pistonLevelDb(FALL_X.minus3Db)).toBeCloseTo(10 * Math.log10(1 / 2), 6)
  expect(pistonLevelDb(FALL_X.minus6Db)).toBeCloseTo(20 * Math.log10(1 / 2), 6)
  expect(pistonLevelDb(FALL_X.firstNull)).toBeNull()
})

it('on the axis nothing is lost and nothing falls', () => {
  expect(pistonLevelDb(0)).toBe(0)
  expect(pistonLevelDb(pistonX(0.035, 20_000, 0, 344))).toBe(0)
  for (const fall of ['minus3Db', 'minus6Db', 'firstNull'] as const)
    expect(fallFrequencyHz(fall, 0.035, 0, 344)).toBeNull()
})

// Diameter of an aperture in wavelengths: first dark ring at sin θ = 1.22 λ/D (Airy 1835, from memory).
it('the first null lies on the first dark ring of an aperture', () => {
  const nullHz = fallFrequencyHz('firstNull', 0.035, 30, 344)!
  expect((Math.sin(Math.PI / 6) * 0.07 * nullHz) / 344).toBeCloseTo(1.21967, 4)
})

it.each(['minus3Db', 'minus6Db'] as const)('at the frequency found the level has fallen: %s', (fall) => {
  const frequencyHz = fallFrequencyHz(fall, 0.035, 45, 344)!
  const levelDb = pistonLevelDb(pistonX(0.035, frequencyHz, 45, 344))
  expect(levelDb).toBeCloseTo(fall === 'minus3Db' ? -3.0103 : -6.0206, 4)
})

// ka = 2: the circumference is two wavelengths.
it('break-up begins where two wavelengths fit round the cone', () => {
  const wavelengthM = 344 / breakUpFrequencyHz(0.035, 344)
  expect((2 * Math.PI * 0.035) / wavelengthM).toBeCloseTo(2, 12)
})
