import { expect, it } from 'vitest'
import { boxTuning } from '../../../src/core/box/box-tuning.ts'
import { logSpaced } from '../../../src/core/box/circuit.ts'
import { allowedShare, protectiveHighPassHz } from '../../../src/core/box/limits.ts'
import { checks, expectWithin } from '../../outside/checks.ts'

const RATINGS = { xmaxMm: 2, ratedPowerW: 4, reOhm: 4, opening: { kind: 'port' } as const }

it.each([
  ['nothing', 1, 0.1, 1, 'voltage', 1],
  // √(4 W · 4 ohm) = 4 V of the 8 V.
  ['rated power', 8, 0.1, 1, 'power', 0.5],
  ['excursion', 1, 8, 1, 'excursion', 0.25],
  ['air speed', 1, 0.1, 170, 'air-speed', 0.1],
] as const)('%s ends the level', (_, voltage, excursion, speed, limitedBy, share) => {
  const found = allowedShare(RATINGS, {
    frequencyHz: 100,
    driverV: voltage,
    excursionMm: excursion,
    ventSpeedMPerS: speed,
  })
  expect(found.limitedBy).toBe(limitedBy)
  expect(found.share).toBeCloseTo(share, 12)
})

it('what is not known does not limit', () => {
  expect(
    allowedShare(
      { xmaxMm: null, ratedPowerW: null, reOhm: 4, opening: null },
      { frequencyHz: 100, driverV: 99, excursionMm: 50, ventSpeedMPerS: 99 },
    ),
  ).toEqual({
    share: 1,
    limitedBy: 'voltage',
  })
})

it('the high-pass just keeps a constant excursion of √2 times the limit at its corner', () => {
  // Second-order Butterworth: −3 dB at the corner, so a lone tone of √2 xmax sits exactly at the corner.
  const grid = logSpaced(10, 2000, 400)
  const tone = grid[200]!
  const excursion = grid.map((hz) => (hz === tone ? Math.SQRT2 : 0))
  expect(protectiveHighPassHz(grid, excursion, 1)).toBeCloseTo(tone, 6)
})

it('says null when no high-pass suffices', () => {
  const grid = logSpaced(10, 2000, 400)
  expect(
    protectiveHighPassHz(
      grid,
      grid.map(() => 10),
      1,
    ),
  ).toBeNull()
})

it('a passive radiator ends the level by its travel', () => {
  // 1 m/s peak at 100 Hz is 1000/(2π·100) = 1.59 mm; 0.8 mm are allowed.
  const ratings = { ...RATINGS, opening: { kind: 'radiator', xmaxMm: 0.8 } as const }
  const found = allowedShare(ratings, { frequencyHz: 100, driverV: 1, excursionMm: 0.1, ventSpeedMPerS: 1 })
  expect(found.limitedBy).toBe('radiator')
  expect(found.share).toBeCloseTo((0.8 * 2 * Math.PI * 100) / 1000, 12)
})

// R. H. Small, closed box (from memory): p = ρω² Sd xmax/(2πr), RMS.
it.each(checks('acoustics-checks.json', 'max-spl'))('$id', (check) => {
  const { sdCm2, xmaxMm, frequencyHz } = check.inputs
  const outcome = boxTuning({
    driver: { fsHz: 100, qms: 3, qes: 0.6, vasL: 0.9, sdCm2, reOhm: 4, leMh: 0, xmaxMm },
    box: { kind: 'closed', netVolumeL: 2, leakageQ: null, absorptionQ: null },
    drive: { voltageV: 100 },
    curve: { fromHz: frequencyHz, toHz: 2 * frequencyHz, points: 2 },
  })
  if ('faults' in outcome) throw new Error('refused')
  expectWithin(check, 'splDb', outcome.sections.curves.maximumSplDb[0])
})
