import fc from 'fast-check'
import { evaluate } from 'mathjs'
import { describe, expect, test } from 'vitest'
import type { ComplexCurve } from '../../../src/core/complex-curve.ts'
import { loadImpedance } from '../../../src/core/load/load-impedance.ts'
import { isRefusal } from '../../../src/core/outcome.ts'
import type { Driver } from '../../../src/schema/driver.ts'
import { LoadImpedanceRequest, loadImpedanceSections } from '../../../src/schema/load-impedance.ts'
import type { Wiring } from '../../../src/schema/wiring.ts'
import { expectConforms } from './conforms.ts'
import { admittedBy, notFinite } from './schema-arbitrary.ts'

const GRID = Float64Array.from({ length: 60 }, (_, i) => 10 * 2000 ** (i / 59))
const NOTHING: ReadonlyMap<string, ComplexCurve> = new Map()

const driver = (id: string, parameters: Driver['parameters'], count?: number): Driver => ({
  id,
  parameters,
  ...(count === undefined ? {} : { count }),
})

const eight = driver('main', { ratedImpedanceOhm: 8 })

function outcome(request: LoadImpedanceRequest, channelsPerBox?: number) {
  const result = loadImpedance(request, NOTHING, GRID, channelsPerBox)
  if (isRefusal(result)) throw new Error(result.faults.map(({ message }) => message).join(' '))
  return result
}

function faultsOf(request: LoadImpedanceRequest, channelsPerBox?: number) {
  const result = loadImpedance(request, NOTHING, GRID, channelsPerBox)
  return isRefusal(result) ? result.faults : []
}

describe('common practice', () => {
  test('two 8 ohm drivers in parallel are 4 ohm and read about 3.5', () => {
    const { load } = outcome({ drivers: [eight], wiring: { parallel: ['main', 'main'] } }).sections
    expect(load.ratedOhm).toBeCloseTo(4, 9)
    expect(load.meterOhm).toBeCloseTo(3.5, 9)
  })

  test('two 4 ohm drivers in series are 8 ohm', () => {
    const four = driver('main', { ratedImpedanceOhm: 4, reOhm: 3.4 })
    const { load } = outcome({ drivers: [four], wiring: { series: ['main', 'main'] } }).sections
    expect(load.ratedOhm).toBeCloseTo(8, 9)
    expect(load.meterOhm).toBeCloseTo(6.8, 9)
  })

  test('a capacitor in every path reads open on a meter', () => {
    const { sections, findings } = outcome({
      drivers: [eight],
      wiring: { series: [{ capacitorUf: 4.7 }, 'main'] },
    })
    expect(sections.load.meterOhm).toBeNull()
    expect(findings.map(({ code }) => code)).toContain('meter-reads-open')
  })
})

describe('the rated impedance of the load', () => {
  const ratedOhm = (ratedImpedanceOhm: number, reOhm: number) =>
    outcome({ drivers: [driver('main', { ratedImpedanceOhm, reOhm })], amplifier: { supplyVoltageV: 12 } })
      .sections.load.ratedOhm

  // IEC 60268-5, 16.1: the impedance is nowhere below 80 % of the rated one. The grid here knows resistances only.
  test.each([
    [16, 3.4, 4],
    [4, 20, 16],
    [8, 6, 6],
    [8, 6.4, 8],
    [8, 7, 8],
  ])('printed %d ohm on %d ohm is %d ohm', (printed, reOhm, expected) => {
    expect(ratedOhm(printed, reOhm)).toBe(expected)
  })

  test('is never above the lowest impedance over 0.8, nor is that of another wiring', () => {
    const ohms = fc.double({ min: 0.5, max: 2000, noNaN: true })
    fc.assert(
      fc.property(ohms, ohms, (ratedImpedanceOhm, reOhm) => {
        const { load, alternatives } = outcome({
          drivers: [driver('main', { ratedImpedanceOhm, reOhm })],
          wiring: { series: ['main', 'main'] },
        }).sections
        for (const row of [load, ...alternatives])
          expect(row.ratedOhm).toBeLessThanOrEqual((row.minimumOhm / 0.8) * (1 + 1e-9))
      }),
      { seed: 20_260_201, numRuns: 200 },
    )
  })
})

describe('wiring left out', () => {
  test('one driver stands alone, without an assumption about the wiring', () => {
    const { sections, assumptions } = outcome({ drivers: [eight] })
    expect(sections.load.ratedOhm).toBe(8)
    expect(assumptions.map(({ at }) => at)).toEqual(['/drivers/0/parameters/reOhm'])
  })

  test('two of a kind are taken in parallel, and it is said', () => {
    const { sections, assumptions } = outcome({ drivers: [driver('main', { ratedImpedanceOhm: 8 }, 2)] })
    expect(sections.load.ratedOhm).toBe(4)
    expect(assumptions).toContainEqual(expect.objectContaining({ at: '/wiring', value: 'parallel' }))
  })

  test('different drivers cannot be guessed', () => {
    expect(faultsOf({ drivers: [eight, driver('tweeter', { reOhm: 6 })] }).map(({ at }) => at)).toEqual([
      '/wiring',
    ])
  })
})

describe('contradictions, every one told where it is', () => {
  test('an unknown id is told inside the tree with the nearest known one', () => {
    const wiring: Wiring = { series: ['main', { parallel: ['mian', 'x'] }] }
    const faults = faultsOf({ drivers: [eight], wiring })
    expect(faults.map(({ at }) => at)).toEqual(['/wiring/series/1/parallel/0', '/wiring/series/1/parallel/1'])
    expect(faults[0]?.message).toContain('did you mean "main"?')
  })

  test('an id that two kinds have is named once among the known ones', () => {
    const faults = faultsOf({ drivers: [eight, eight], wiring: { series: ['main', 'x'] } })
    const unknown = faults.find(({ at }) => at === '/wiring/series/1')
    expect(unknown?.message).toMatch(/known are: main$/)
  })

  test('drivers in the box and drivers in the wiring must agree, times the channels', () => {
    const pair = driver('main', { ratedImpedanceOhm: 8 }, 2)
    expect(faultsOf({ drivers: [pair], wiring: 'main' }, 1).map(({ at }) => at)).toEqual(['/drivers/0/count'])
    expect(faultsOf({ drivers: [pair], wiring: 'main' }, 2)).toEqual([])
    expect(faultsOf({ drivers: [pair], wiring: { series: ['main', 'main'] } }, 1)).toEqual([])
  })

  test('a driver that nothing drives, a repeated id and a driver without resistance are all told', () => {
    const faults = faultsOf({ drivers: [eight, eight, driver('spare', {})], wiring: 'main' })
    expect(faults.map(({ at }) => at)).toEqual(['/drivers/1/id', '/drivers/2', '/drivers/2/parameters/reOhm'])
    expect(faultsOf({ drivers: [driver('main', { fsHz: 100 })] }).map(({ at }) => at)).toEqual([
      '/drivers/0/parameters/reOhm',
    ])
  })

  test('a board whose lowest supply is above its highest is refused', () => {
    const amplifier = { minimumSupplyV: 12, maximumSupplyV: 9 }
    expect(faultsOf({ drivers: [eight], amplifier }).map(({ at }) => at)).toEqual([
      '/amplifier/minimumSupplyV',
    ])
  })

  test('a wiring nested beyond reason is refused, not followed', () => {
    let wiring: Wiring = 'main'
    for (let depth = 0; depth < 200; depth++) wiring = { series: [wiring] }
    expect(faultsOf({ drivers: [eight], wiring })).toHaveLength(1)
  })
})

describe('other wirings of the same drivers', () => {
  test('four equal drivers have ten, four different ones 52 (OEIS A000084 and A006351)', () => {
    const amplifier = { supplyVoltageV: 12 }
    const equal = outcome({
      drivers: [eight],
      wiring: { series: ['main', 'main', 'main', 'main'] },
      amplifier,
    })
    expect(equal.sections.alternatives).toHaveLength(10 - 1)
    const names = ['a', 'b', 'c', 'd']
    const different = outcome({
      drivers: names.map((id, index) => driver(id, { reOhm: 3 + index })),
      wiring: { parallel: names },
    })
    expect(different.sections.alternatives).toHaveLength(52 - 1)
  })

  test('from series to parallel a pair gains 6 dB at the same voltage', () => {
    const [parallel] = outcome({ drivers: [eight], wiring: { series: ['main', 'main'] } }).sections
      .alternatives
    expect(parallel?.text).toBe('main and main in parallel')
    expect(parallel?.levelDb).toBeCloseTo(6.02, 2)
    expect(parallel?.powerW).toBeNull()
  })

  test('six equal drivers are offered in rows and columns', () => {
    const { alternatives } = outcome({
      drivers: [eight],
      wiring: { series: Array.from({ length: 6 }, () => 'main') },
    }).sections
    // Two columns of three (12 ohm) and three of two (5.33 ohm), each both ways, and all in parallel.
    expect(alternatives.map(({ ratedOhm }) => Math.round(ratedOhm * 100) / 100)).toEqual([
      1.33, 5.33, 5.33, 12, 12,
    ])
  })

  test('a crossover has no other wiring', () => {
    const wiring: Wiring = { series: [{ capacitorUf: 10 }, 'main'] }
    expect(outcome({ drivers: [eight], wiring }).sections.alternatives).toEqual([])
  })
})

test('the impedance handed in is used: its peak, its minimum and where they are', () => {
  // 6 ohm, a hump of 30 ohm at point 20, down to 5 at point 40 and from there slowly up, as a coil does.
  const re = GRID.map((_, i) => (i === 20 ? 30 : i < 40 ? 6 : 5 + 0.1 * (i - 40)))
  const im = GRID.map(() => 0)
  const result = loadImpedance({ drivers: [eight] }, new Map([['main', { re, im }]]), GRID)
  if (isRefusal(result)) throw new Error('refused')
  expect(result.sections.load.minimumOhm).toBeCloseTo(5, 12)
  expect(result.sections.load.minimumAtHz).toBe(GRID[40])
  expect(result.sections.loadCurve.impedanceOhm[20]).toBeCloseTo(30, 12)
  expect(result.sections.shares[0]?.atHz).toBe(GRID[40])
})

test('shares are compared above the resonance, not at a minimum below it', () => {
  // Lowest of all at the first point, a hump of 30 ohm at point 20, 5 ohm at point 40 and slowly up from there.
  const re = GRID.map((_, i) => (i === 0 ? 4 : i === 20 ? 30 : i < 40 ? 6 : 5 + 0.1 * (i - 40)))
  const im = GRID.map(() => 0)
  const result = loadImpedance({ drivers: [eight] }, new Map([['main', { re, im }]]), GRID)
  if (isRefusal(result)) throw new Error('refused')
  expect(result.sections.load.minimumAtHz).toBe(GRID[0])
  expect(result.sections.shares[0]?.atHz).toBe(GRID[40])
})

// Rows first-order-3000, zobel-6.9 and pad-3 of tests/outside/electrical-checks.json, here through the calculation.
describe('a crossover to size', () => {
  const drivers = [driver('main', { reOhm: 8 })]

  test('takes the impedance of the driver at the corner', () => {
    const [parts] = outcome({ drivers, crossover: { cornerHz: 3000, attenuationDb: 3 } }).sections.crossover
    expect(parts?.capacitorUf).toBeCloseTo(6.6315, 3)
    expect(parts?.inductorMh).toBeCloseTo(0.42441, 4)
    expect(parts?.capacitorE12Uf).toBe(6.8)
    expect(parts?.padSeriesOhm).toBeCloseTo(2.3364, 3)
    expect(parts?.zobelOhm).toBeNull()
  })

  test('takes the resistance of a driver whose inductance a Zobel flattens', () => {
    const coil = [driver('main', { reOhm: 6.9, leMh: 0.3 })]
    const [parts] = outcome({ drivers: coil, crossover: { cornerHz: 3000, order: 2 } }).sections.crossover
    expect(parts?.zobelUf).toBeCloseTo(6.3012, 3)
    expect(parts?.loadOhm).toBeCloseTo(6.9, 4)
    // Row second-order-3000 for 8 ohm, scaled to 6.9.
    expect(parts?.capacitorUf).toBeCloseTo((3.3157 * 8) / 6.9, 3)
  })

  test('is left out when none is wished', () => {
    expect(outcome({ drivers }).sections.crossover).toEqual([])
  })
})

test('the printed working comes to the same figures as the plain code', () => {
  const { sections, working } = outcome({
    drivers: [driver('main', { reOhm: 3.4 })],
    wiring: { parallel: ['main', 'main'] },
    amplifier: {},
  })
  const results = working.map((row) => evaluate(row.formula, { ...row.with }))
  expect(results[0]).toBeCloseTo(sections.load.meterOhm ?? 0, 12)
  expect(results[1]).toBeCloseTo(sections.load.allowedMinimumOhm ?? 0, 12)
  expect(results[2]).toBeCloseTo(sections.load.minimumOhm / 0.8, 12)
})

test('the sections are what the contract says of them', () => {
  const { sections } = outcome({
    drivers: [driver('main', { reOhm: 3.4 })],
    wiring: { series: ['main', 'main'] },
    amplifier: { supplyVoltageV: 12 },
    crossover: { cornerHz: 2500, attenuationDb: 6 },
  })
  expectConforms(sections, loadImpedanceSections)
})

test('no request that the schema admits gets a number that is none, or a throw', () => {
  let answered = 0
  fc.assert(
    fc.property(admittedBy(LoadImpedanceRequest), (request) => {
      const result = loadImpedance(request as LoadImpedanceRequest, NOTHING, GRID)
      if (isRefusal(result)) expect(result.faults.length).toBeGreaterThan(0)
      else answered++
      expect(notFinite(result)).toEqual([])
    }),
    { seed: 20_260_104, numRuns: 2000 },
  )
  expect(answered).toBeGreaterThan(30)
})

test('any wiring of parts around one driver is answered with numbers', () => {
  fc.assert(
    fc.property(
      admittedBy({ $ref: 'Wiring#' }),
      fc.double({ min: 0.1, max: 2000, noNaN: true }),
      (tree, reOhm) => {
        const result = outcome({
          drivers: [
            driver('main', { reOhm }),
            driver('tweeter', { reOhm: 6 }),
            driver('other', { reOhm: 4 }),
          ],
          wiring: { parallel: [{ series: ['main', 'tweeter', 'other'] }, tree as Wiring] },
          amplifier: { supplyVoltageV: 12 },
        })
        expect(notFinite(result)).toEqual([])
      },
    ),
    { seed: 20_260_105, numRuns: 400 },
  )
})
