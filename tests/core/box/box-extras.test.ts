import { describe, expect, it } from 'vitest'
import { boxTuning } from '../../../src/core/box/box-tuning.ts'
import type { BoxTuningRequest } from '../../../src/schema/box-tuning.ts'

const DRIVER = { fsHz: 124, qms: 3.2, qes: 0.55, vasL: 0.92, sdCm2: 28, reOhm: 3.4, leMh: 0.06, xmaxMm: 2.2 }
const BASE: BoxTuningRequest = {
  driver: DRIVER,
  driverCount: 2,
  driverWiring: 'series',
  box: {
    kind: 'vented',
    outer: { widthMm: 120, heightMm: 240, depthMm: 160 },
    panelThicknessMm: 12,
    leakageQ: 10,
  },
  port: { innerDiameterMm: 26, outerDiameterMm: 32, tuningHz: 105, model: 'lumped' },
  drive: { voltageV: 8 },
}
const run = (request: BoxTuningRequest) => {
  const outcome = boxTuning(request)
  if ('faults' in outcome) throw new Error(JSON.stringify(outcome.faults))
  return outcome
}

describe('tubes on hand', () => {
  const tubes = [{ innerDiameterMm: 26 }, { innerDiameterMm: 44, lengthMm: 60 }]
  const { sections } = run({ ...BASE, tubes })
  it('the tube of the request itself gives the same length and air speed', () => {
    const same = sections.tubes[0]!
    expect(same.count).toBe(1)
    expect(same.lengthMm! / sections.port!.lengthMm!).toBeCloseTo(1, 6)
    expect(same.airSpeedMPerS).toBeCloseTo(sections.port!.airSpeedMPerS, 9)
  })
  it('a wider tube really moves its air as much slower as said', () => {
    const wide = sections.tubes.find(({ innerDiameterMm, count }) => innerDiameterMm === 44 && count === 1)!
    const direct = run({
      ...BASE,
      box: { kind: 'vented', netVolumeL: sections.tuning.netVolumeL, leakageQ: 10 },
      port: { innerDiameterMm: 44, tuningHz: 105, model: 'lumped' },
    })
    // Only wall friction, which changes with the diameter, sets the two apart.
    expect(wide.airSpeedMPerS / direct.sections.port!.airSpeedMPerS).toBeCloseTo(1, 1)
    expect(wide.lengthMm! / direct.sections.port!.lengthMm!).toBeCloseTo(1, 6)
  })
  it('what is too long for the box or the tube on hand is not acceptable', () => {
    const wide = sections.tubes.filter(({ innerDiameterMm }) => innerDiameterMm === 44)
    expect(wide.every(({ acceptable }) => !acceptable)).toBe(true)
  })
})

it('sensitivity: 2.83 V and 1 W differ by the resistance of the channel', () => {
  const { tuning } = run(BASE).sections
  // Two of 3.4 ohm in series: 2.83²/6.8 = 1.178 W.
  expect(tuning.spl2V83Db - tuning.spl1WDb).toBeCloseTo(10 * Math.log10(2.83 ** 2 / 6.8), 9)
})

describe('where the sound goes', () => {
  const { directivity } = run({ ...BASE, driverSpacingMm: 80 }).sections
  it('two drivers 80 mm apart cancel in their line from c/(2d) up', () => {
    // Half a wavelength: 343.994/(2 · 0.08).
    expect(directivity.pairNullAboveHz).toBeCloseTo(343.994 / 0.16, 0)
  })
  it('their power gain near the bass is close to 3 dB', () => {
    // 1 + sin(kd)/(kd) → 2 (Pritchard 1960, from memory).
    expect(directivity.pairGainAt?.powerGainDb).toBeGreaterThan(2.9)
    expect(directivity.pairGainAt?.powerGainDb).toBeLessThan(3.0103)
  })
  it('is silent about a pair without its spacing', () => {
    expect(run(BASE).sections.directivity).toMatchObject({ pairNullAboveHz: null, pairGainAt: null })
  })
})

it('the air load lowers the closed resonance by the root of the mass', () => {
  const closed: BoxTuningRequest = {
    driver: DRIVER,
    box: {
      kind: 'closed',
      outer: { widthMm: 120, heightMm: 240, depthMm: 160 },
      panelThicknessMm: 12,
      leakageQ: null,
      absorptionQ: null,
    },
  }
  const loaded = { ...closed, box: { ...closed.box, airLoad: true } }
  const peak = (request: BoxTuningRequest) => run(request).sections.impedance.peaks[0]!.hz
  const ratio = peak(loaded) / peak(closed)
  // 8ρa³/3 ≈ 0.085 g on 2 g of cone and air (Beranek 1954): a few per cent down.
  expect(ratio).toBeLessThan(0.99)
  expect(ratio).toBeGreaterThan(0.95)
})
