import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { boxTuning } from '../../../src/core/box/box-tuning.ts'
import type { BoxTuningRequest } from '../../../src/schema/box-tuning.ts'

const SEED = 20261125
const DRIVER = { fsHz: 95, qms: 3.4, qes: 0.55, vasL: 2.1, sdCm2: 52, reOhm: 3.6, leMh: 0.12, xmaxMm: 3 }
const VENTED: BoxTuningRequest = {
  driver: DRIVER,
  box: { kind: 'vented', netVolumeL: 3, leakageQ: 10, absorptionQ: null, portQ: null },
  port: { innerDiameterMm: 30, tuningHz: 80, model: 'lumped' },
}
const CLOSED: BoxTuningRequest = {
  driver: DRIVER,
  box: { kind: 'closed', netVolumeL: 3, leakageQ: null, absorptionQ: null },
}

const run = (request: BoxTuningRequest) => {
  const outcome = boxTuning(request)
  if ('faults' in outcome) throw new Error(JSON.stringify(outcome.faults))
  return outcome
}
const faultsOf = (request: BoxTuningRequest) => {
  const outcome = boxTuning(request)
  return 'faults' in outcome ? outcome.faults.map((fault) => fault.at) : []
}

describe('laws of the response', () => {
  it('falls by 12 dB an octave in a tight closed box and 24 in a lossless vented one', () => {
    // R. H. Small 1972, 1973: second- and fourth-order high-pass.
    const slope = (request: BoxTuningRequest) => {
      const { curves } = run({ ...request, curve: { fromHz: 2, toHz: 4, points: 2 } }).sections
      return curves.splDb[1]! - curves.splDb[0]!
    }
    expect(slope(CLOSED)).toBeCloseTo(12.04, 1)
    expect(slope({ ...VENTED, box: { ...VENTED.box, leakageQ: null } })).toBeCloseTo(24.08, 0)
  })
  it('a hair-thin port is a closed box', () => {
    const thin = {
      ...VENTED,
      box: { ...CLOSED.box, kind: 'vented' as const, portQ: null },
      port: { innerDiameterMm: 2, lengthMm: 3000 },
    }
    const curve = { fromHz: 60, toHz: 400, points: 30 }
    const a = run({ ...thin, curve }).sections.curves.splDb
    const b = run({ ...CLOSED, curve }).sections.curves.splDb
    a.forEach((level, i) => {
      expect(Math.abs(level - b[i]!)).toBeLessThan(0.05)
    })
  })
  it('full space is 6 dB below half space', () => {
    const half = run(CLOSED).sections.curves.splDb
    const full = run({ ...CLOSED, space: 'full' }).sections.curves.splDb
    half.forEach((level, i) => {
      expect(level - full[i]!).toBeCloseTo(6.0206, 4)
    })
  })
  it('the impedance never falls below Re and its real part gives no energy back', () => {
    fc.assert(
      fc.property(
        fc.record({
          fsHz: fc.double({ min: 30, max: 300, noNaN: true }),
          qes: fc.double({ min: 0.2, max: 3, noNaN: true }),
          vasL: fc.double({ min: 0.1, max: 30, noNaN: true }),
          netVolumeL: fc.double({ min: 0.2, max: 30, noNaN: true }),
          tuningHz: fc.double({ min: 30, max: 200, noNaN: true }),
          model: fc.constantFrom('tube' as const, 'lumped' as const),
        }),
        ({ netVolumeL, tuningHz, model, ...driver }) => {
          const { curves } = run({
            driver: { ...driver, qms: 4, sdCm2: 40, reOhm: 4, leMh: 0.1 },
            box: { kind: 'vented', netVolumeL },
            port: { innerDiameterMm: 40, tuningHz, model },
          }).sections
          curves.impedanceOhm.forEach((z, i) => {
            expect(z).toBeGreaterThanOrEqual(4 * (1 - 1e-9))
            expect(Math.abs(curves.impedancePhaseDeg[i]!)).toBeLessThanOrEqual(90)
          })
        },
      ),
      { seed: SEED, numRuns: 60 },
    )
  })
  it('group delay is the slope of the phase of a closed box', () => {
    // Second-order high-pass without inductance: τ(0) → Q-independent 2·(1/(2Q))…: compare with the exact formula.
    const request = {
      ...CLOSED,
      driver: { ...DRIVER, leMh: 0 },
      curve: { fromHz: 60, toHz: 600, points: 20 },
    }
    const { tuning, curves } = run(request).sections
    const w0 = 2 * Math.PI * (tuning.fcHz ?? 0)
    const q = tuning.qtc ?? 1
    curves.frequencyHz.forEach((hz, i) => {
      const y = (2 * Math.PI * hz) / w0
      // −d/dω of arg[−y²/(1 − y² + jy/Q)]
      const delay = ((1 + y * y) / q / ((1 - y * y) ** 2 + (y / q) ** 2) / w0) * 1000
      expect(curves.groupDelayMs[i]).toBeCloseTo(delay, 4)
    })
  })
})

it('reports tuning, ratio and volume of a vented box', () => {
  const { tuning } = run(VENTED).sections
  expect(tuning).toMatchObject({ fbHz: 80, netVolumeL: 3 })
  // 80/95 and 2.1/3: definitions.
  expect(tuning.h).toBeCloseTo(0.842105, 6)
  expect(tuning.alpha).toBeCloseTo(0.7, 4)
})

it('lining widens the volume and says what it assumed', () => {
  const lined = run({ ...CLOSED, box: { kind: 'closed', netVolumeL: 3, lining: 'filled' } })
  expect(lined.sections.tuning.acousticVolumeL).toBeGreaterThan(3)
  expect(lined.assumptions.map((row) => row.at)).toEqual(
    expect.arrayContaining(['/box/leakageQ', '/box/absorptionQ', '/drive/voltageV']),
  )
})

it('a warmer day moves the tuning of a given tube, as the speed of sound', () => {
  const port = { innerDiameterMm: 30, lengthMm: 50 }
  const fb = (temperatureC: number) =>
    run({ ...VENTED, port, air: { temperatureC } }).sections.tuning.fbHz ?? 0
  // Cramer 1993: 0 → 30 °C changes c by about 5.3%.
  expect(fb(30) / fb(0)).toBeGreaterThan(1.05)
  expect(fb(30) / fb(0)).toBeLessThan(1.06)
})

it('the step of the front panel goes from full to half space', () => {
  const box = {
    kind: 'closed' as const,
    outer: { widthMm: 150, heightMm: 250, depthMm: 200 },
    panelThicknessMm: 12,
  }
  const curve = { fromHz: 20, toHz: 5000, points: 60 }
  const [half, baffle] = (['half', 'baffle'] as const).map(
    (space) => run({ ...CLOSED, box, space, curve }).sections.curves.splDb,
  )
  expect(baffle![0]! - half![0]!).toBeCloseTo(-6, 1)
  // Above the step the panel is a half space but for the ripple of its edges.
  const top = half!.map((level, i) => baffle![i]! - level).slice(40)
  expect(Math.abs(top.reduce((a, b) => a + b, 0) / top.length)).toBeLessThan(2)
})

describe('refusals', () => {
  it.each([
    ['a vented box without a port', { driver: DRIVER, box: VENTED.box }, ['/port']],
    ['a closed box with a port', { ...CLOSED, port: { innerDiameterMm: 30, tuningHz: 80 } }, ['/port']],
    [
      'a radiator box without radiator',
      { driver: DRIVER, box: { kind: 'passive-radiator', netVolumeL: 3 } },
      ['/passiveRadiator'],
    ],
    ['a baffle step without sides', { ...CLOSED, space: 'baffle' }, ['/box/outer']],
    ['a curve that ends before it begins', { ...CLOSED, curve: { fromHz: 200, toHz: 100 } }, ['/curve/toHz']],
    [
      'several faults at once',
      { driver: { fsHz: 90 }, box: { kind: 'vented' } },
      ['/driver/qes', '/driver/vasL', '/driver/sdCm2', '/driver/reOhm', '/port', '/box/outer'],
    ],
  ] satisfies [string, BoxTuningRequest, string[]][])('%s', (_, request, at) => {
    expect(faultsOf(request)).toEqual(at)
  })

  it.each([
    ['a port', { ...CLOSED, port: { innerDiameterMm: 30, tuningHz: 80 } }],
    ['a passive radiator', { ...CLOSED, passiveRadiator: { fsHz: 30, qms: 5, vasL: 5, sdCm2: 50 } }],
  ] satisfies [string, BoxTuningRequest][])(
    'say in words what to do about %s in a closed box',
    (_, request) => {
      const outcome = boxTuning(request)
      if (!('faults' in outcome)) throw new Error('answered')
      for (const { message } of outcome.faults) {
        expect(message).toMatch(/make the kind of the box ".*", or leave (the port|it) out$/)
        expect(message).not.toMatch(/\w\.\w/)
      }
    },
  )
})

it('a passive radiator notches the response at its own resonance', () => {
  // R. H. Small 1974: the notch lies at fp.
  const { curves } = run({
    driver: DRIVER,
    box: { kind: 'passive-radiator', netVolumeL: 2.5, leakageQ: null, absorptionQ: null },
    passiveRadiator: { fsHz: 45, qms: 90, vasL: 4, sdCm2: 60 },
    curve: { fromHz: 30, toHz: 67.5, points: 201 },
  }).sections
  const lowest = curves.splDb.indexOf(Math.min(...curves.splDb.slice(20)))
  expect(curves.frequencyHz[lowest]).toBeCloseTo(45, 0)
})

it('is finite at the very tuning of a box without any loss', () => {
  // Every admittance of the box cancels there; a circuit without a trace of loss would divide by nothing.
  for (const tuningHz of [50, 64, 80, 105, 128]) {
    const { curves } = run({
      driver: DRIVER,
      box: { kind: 'vented', netVolumeL: 3, leakageQ: null, absorptionQ: null, portQ: null },
      port: { innerDiameterMm: 30, tuningHz, model: 'lumped' },
      curve: { fromHz: tuningHz, toHz: 2 * tuningHz, points: 3 },
    }).sections
    const { limitedBy: _, ...numbers } = curves
    for (const values of Object.values(numbers)) expect(values.every(Number.isFinite)).toBe(true)
  }
})

describe('usual losses lie in the ranges that are in use (common practice, no source)', () => {
  const assumed = (box: BoxTuningRequest['box'], field: string) =>
    Number(run({ driver: DRIVER, box }).assumptions.find(({ at }) => at === `/box/${field}`)?.value)
  it.each([
    ['leakage of a closed box', assumed({ kind: 'closed', netVolumeL: 3 }, 'leakageQ'), 10, 50],
    [
      'absorption of lined walls',
      assumed({ kind: 'closed', netVolumeL: 3, lining: 'walls' }, 'absorptionQ'),
      30,
      80,
    ],
    [
      'absorption of a filled box',
      assumed({ kind: 'closed', netVolumeL: 3, lining: 'filled' }, 'absorptionQ'),
      3,
      10,
    ],
    [
      'gain of a filled box',
      run({ driver: DRIVER, box: { kind: 'closed', netVolumeL: 3, lining: 'filled' } }).sections.tuning
        .acousticVolumeL / 3,
      1.1,
      1.25,
    ],
    [
      'gain of lined walls',
      run({ driver: DRIVER, box: { kind: 'closed', netVolumeL: 3, lining: 'walls' } }).sections.tuning
        .acousticVolumeL / 3,
      1,
      1.05,
    ],
  ])('%s', (_, value, low, high) => {
    expect(value).toBeGreaterThanOrEqual(low)
    expect(value).toBeLessThanOrEqual(high)
  })
})

describe('what a second reading found', () => {
  it('air speed is judged at the tuning even when the response ends above it', () => {
    const { port, tuning } = run({
      driver: DRIVER,
      box: { kind: 'vented', netVolumeL: 2.5 },
      port: { innerDiameterMm: 13, tuningHz: 60, model: 'lumped' },
    }).sections
    expect(tuning.f3Hz!).toBeGreaterThan(100)
    // The flow through a port is highest about its tuning (Small 1973).
    expect(port!.atHz).toBeLessThan(70)
  })
  it('resistance before the driver takes power off it', () => {
    const at = (sourceResistanceOhm: number) =>
      run({
        driver: { ...DRIVER, xmaxMm: 50, ratedPowerW: 5 },
        box: CLOSED.box,
        drive: { voltageV: 20, sourceResistanceOhm },
      }).sections
    const room = (sections: ReturnType<typeof at>) =>
      sections.curves.splDb.at(100)! - sections.curves.maximumSplDb.at(100)!
    // Equal resistances halve the voltage at the coil: 6.02 dB more room under the same rating.
    expect(room(at(0)) - room(at(3.6))).toBeCloseTo(6.0206, 3)
  })
  it('the air load moves figures and curves alike', () => {
    const box = {
      kind: 'closed' as const,
      outer: { widthMm: 120, heightMm: 240, depthMm: 160 },
      panelThicknessMm: 12,
      leakageQ: null,
      absorptionQ: null,
      airLoad: true,
    }
    const { tuning, impedance } = run({ driver: { ...DRIVER, leMh: 0 }, box }).sections
    expect(impedance.peaks[0]!.hz / tuning.fcHz!).toBeCloseTo(1, 3)
  })
  it('the highest level counts the step of the panel as its curve does', () => {
    const box = {
      kind: 'closed' as const,
      outer: { widthMm: 150, heightMm: 250, depthMm: 200 },
      panelThicknessMm: 12,
    }
    const { limits, curves } = run({
      driver: DRIVER,
      box,
      space: 'baffle',
      curve: { fromHz: 100, toHz: 1000, points: 400 },
    }).sections
    const near = curves.frequencyHz.findIndex((hz) => hz >= limits.atHz)
    expect(Math.abs(curves.maximumSplDb[near]! - limits.maximumSplDb)).toBeLessThan(0.2)
  })
  it.each([
    ['a neighbour without a second driver', { ...CLOSED, driverSpacingMm: 80 }, ['/driverSpacingMm']],
    ['cones that overlap', { ...CLOSED, driverCount: 2, driverSpacingMm: 60 }, ['/driverSpacingMm']],
    ['port friction without a port', { ...CLOSED, box: { ...CLOSED.box, portQ: 20 } }, ['/box/portQ']],
    [
      'an exponent without an inductance',
      {
        ...CLOSED,
        driver: { fsHz: 95, qms: 3.4, qes: 0.55, vasL: 2.1, sdCm2: 52, reOhm: 3.6, leExponent: 0.7 },
      },
      ['/driver/leExponent'],
    ],
    [
      'a bend tighter than its tube',
      { ...VENTED, port: { innerDiameterMm: 30, tuningHz: 80, elbows: { count: 1, radiusMm: 5 } } },
      ['/port/elbows/radiusMm'],
    ],
  ] satisfies [string, BoxTuningRequest, string[]][])('refuses %s', (_, request, at) => {
    expect(faultsOf(request)).toEqual(at)
  })
})
