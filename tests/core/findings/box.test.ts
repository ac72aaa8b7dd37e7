import { expect, it } from 'vitest'
import { boxRules } from '../../../src/core/findings/box.ts'
import type { BoxFacts } from '../../../src/core/findings/box-facts.ts'
import { driverDataRules } from '../../../src/core/findings/driver-data.ts'
import { apply } from '../../../src/core/findings/rule.ts'

const QUIET: BoxFacts = {
  kind: 'vented',
  driverAt: '/driver',
  driveVoltageV: 4,
  drive: null,
  closing: null,
  closedPeakDb: () => null,
  tuning: () => null,
  fsHz: 80,
  lining: 'none',
  absorptionGiven: false,
  fitsFilled: true,
  f6Hz: 70,
  qts: 0.4,
  h: 1,
  peakDb: 0,
  peakHz: null,
  xmaxMm: 2,
  bandFromHz: 80,
  excursionMm: 1,
  excursionAtHz: 100,
  tuningHz: 80,
  unloadedMm: 1,
  heldBelowBandMm: 1,
  protectiveHighPassHz: 60,
  safeVoltageV: 4,
  airSpeedMPerS: 5,
  airSpeedAtHz: 80,
  radiatorMm: 0,
  radiatorXmaxMm: null,
  lowest: { hz: 80, levelDb: -2 },
  contradiction: null,
  wanted: null,
  drivePower: null,
}

const codes = (change: Partial<BoxFacts>) =>
  apply([...driverDataRules, ...boxRules], { ...QUIET, ...change }).map((finding) => finding.code)

it('says nothing about a box within every limit', () => {
  expect(codes({})).toEqual([])
})

// Each row: just inside the limit, just outside it, and the finding that then applies. Limits: acoustic literature as
// named beside the rules; 10, 17 and 34 m/s second-hand and common practice, no source.
it.each<[string, Partial<BoxFacts>, Partial<BoxFacts>]>([
  ['cone-leaves-range-in-band', { excursionMm: 2 }, { excursionMm: 2.01 }],
  ['cone-unloaded-below-tuning', { unloadedMm: 2 }, { unloadedMm: 2.01 }],
  ['cone-leaves-range-below-band', { heldBelowBandMm: 2 }, { heldBelowBandMm: 2.01 }],
  ['port-air-speed-noticeable', { airSpeedMPerS: 10 }, { airSpeedMPerS: 10.1 }],
  ['port-air-speed-high', { airSpeedMPerS: 16.9 }, { airSpeedMPerS: 17.1 }],
  ['port-air-speed-extreme', { airSpeedMPerS: 34 }, { airSpeedMPerS: 34.1 }],
  ['radiator-leaves-range', { radiatorMm: 6, radiatorXmaxMm: 6 }, { radiatorMm: 6.1, radiatorXmaxMm: 6 }],
  ['bass-booms', { peakDb: 3 }, { peakDb: 3.1, peakHz: 90 }],
  ['vented-with-lightly-damped-driver', { qts: 0.6 }, { qts: 0.61 }],
  ['tuning-far-from-driver', { h: 2 }, { h: 2.1 }],
  ['tuning-far-from-driver', { h: 0.4 }, { h: 0.39 }],
  ['lowest-note-missing', { lowest: { hz: 80, levelDb: -6 } }, { lowest: { hz: 80, levelDb: -6.1 } }],
  ['driver-data-contradict', {}, { contradiction: { field: 'qts', given: 0.5, implied: 0.4, share: 0.2 } }],
  [
    'driver-data-impossible',
    { contradiction: { field: 'qts', given: 0.5, implied: 0.4, share: 0.25 } },
    { contradiction: { field: 'qts', given: 0.5, implied: 0.3, share: 0.26 } },
  ],
  ['travel-not-judged', {}, { xmaxMm: null }],
  [
    'radiator-travel-not-judged',
    { kind: 'passive-radiator', radiatorXmaxMm: 6 },
    { kind: 'passive-radiator' },
  ],
  [
    'drive-above-rating',
    { drivePower: { powerW: 12, ratedW: 12 } },
    { drivePower: { powerW: 12.1, ratedW: 12 } },
  ],
  [
    'wanted-qtc-out-of-reach',
    { wanted: { qtc: 0.8, reachable: true } },
    { wanted: { qtc: 0.3, reachable: false } },
  ],
])('%s begins at its limit', (code, inside, outside) => {
  expect(codes(inside)).not.toContain(code)
  expect(codes(outside)).toContain(code)
})

it('every finding has a remedy', () => {
  const all = apply(boxRules, {
    ...QUIET,
    excursionMm: 9,
    unloadedMm: 9,
    airSpeedMPerS: 99,
    peakDb: 9,
    qts: 1,
    h: 3,
  })
  expect(all.length).toBeGreaterThan(4)
  for (const finding of all) expect(finding.remedies.length, finding.code).toBeGreaterThan(0)
})
