import { expect, it } from 'vitest'
import { portRules } from '../../../src/core/findings/port.ts'
import type { PortFacts } from '../../../src/core/findings/port-facts.ts'
import { apply } from '../../../src/core/findings/rule.ts'

const FITS: PortFacts = {
  at: '/port',
  given: 'tuningHz',
  tuningOf: () => 120,
  hasBends: false,
  tuningHz: 90,
  lengthMm: 60,
  highestTuningHz: 190,
  pipeResonanceHz: 2500,
  panelThicknessMm: 12,
  insideDepthMm: 136,
  diameterMm: 26,
  reachMm: 60,
  straightMm: 60,
  netVolumeL: 2.7,
  tubeAirL: 0.03,
}

const codes = (change: Partial<PortFacts>) =>
  apply(portRules, { ...FITS, ...change }).map((finding) => finding.code)

it('says nothing about a port that fits', () => {
  expect(codes({})).toEqual([])
})

// Clearance of a diameter behind a tube and 1.5 kHz for pipe tones: common practice, no source.
it.each<[string, Partial<PortFacts>, Partial<PortFacts>]>([
  ['port-cannot-reach-tuning', { lengthMm: 20 }, { lengthMm: null }],
  ['port-shorter-than-panel', { lengthMm: 12 }, { lengthMm: 11.9 }],
  // 136 inside, so a tube of 148 through a board of 12 touches the back.
  ['port-does-not-fit', { reachMm: 147.9 }, { reachMm: 148 }],
  ['port-near-wall', { reachMm: 122 }, { reachMm: 122.1 }],
  ['bends-longer-than-port', { straightMm: 0 }, { straightMm: -0.1 }],
  ['port-pipe-resonance-low', { pipeResonanceHz: 1500 }, { pipeResonanceHz: 1499 }],
  ['port-pipe-resonance-low', { pipeResonanceHz: 199 }, { pipeResonanceHz: 200 }],
  ['port-larger-than-box', { tubeAirL: 1.35 }, { tubeAirL: 1.36 }],
  // A cube of 8 litres is 200 mm wide.
  [
    'port-long-for-box',
    { insideDepthMm: null, netVolumeL: 8, lengthMm: 200 },
    { insideDepthMm: null, netVolumeL: 8, lengthMm: 201 },
  ],
  ['port-is-a-hole', { panelThicknessMm: null, lengthMm: 3 }, { panelThicknessMm: null, lengthMm: 2.9 }],
])('%s begins at its limit', (code, inside, outside) => {
  expect(codes(inside)).not.toContain(code)
  expect(codes(outside)).toContain(code)
})
