import fc from 'fast-check'
import { add, type Complex, complex, divide, multiply } from 'mathjs'
import { describe, expect, test } from 'vitest'
import type { ComplexCurve } from '../../../src/core/complex-curve.ts'
import { meterReadingOhm } from '../../../src/core/load/direct-current.ts'
import { DC_SHARE_OF_RATED } from '../../../src/core/load/driver-resistance.ts'
import { solveNetwork } from '../../../src/core/load/network.ts'
import {
  composedRatedOhm,
  lowestOfRatedOhm,
  ratedFromMinimumOhm,
} from '../../../src/core/load/rated-impedance.ts'
import { driverShares } from '../../../src/core/load/shares.ts'
import { peakCurrentA } from '../../../src/core/power/amplifier.ts'
import type { Wiring } from '../../../src/schema/wiring.ts'
import { holdRows } from '../power/hold-rows.ts'

const ONE_POINT = Float64Array.of(1000)

const resistances = (drivers: { id: string; impedanceOhm: number }[]): Map<string, ComplexCurve> =>
  new Map(
    drivers.map(({ id, impedanceOhm }) => [
      id,
      { re: Float64Array.of(impedanceOhm), im: Float64Array.of(0) },
    ]),
  )

interface Shared {
  drivers: { id: string; impedanceOhm: number }[]
  wiring: Wiring
  voltageV: number
}

const shared = ({ drivers, wiring, voltageV }: Shared) => {
  const impedances = resistances(drivers)
  const network = solveNetwork(wiring, impedances, ONE_POINT)
  const shares = driverShares(network, impedances, ONE_POINT, 0)
  const totalOhm = network.re[0]!
  return {
    totalOhm,
    powerW: shares.map(({ powerShare }) => (powerShare * voltageV ** 2) / totalOhm),
    levelDb: shares.map(({ levelDb }) => levelDb),
  }
}

/** "parallel", "series" or a tree of positions, as the rows have it, for a tree of ids. */
function treeOf(wiring: unknown, count: number): Wiring {
  const ids = Array.from({ length: count }, (_, index) => String(index))
  if (wiring === 'parallel') return { parallel: ids }
  if (wiring === 'series') return { series: ids }
  return JSON.parse(JSON.stringify(wiring), (_, value) => (typeof value === 'number' ? String(value) : value))
}

const byPosition = (values: number[]) => new Map(values.map((value, index) => [String(index), value]))

const composed = ({ ratedOhm, wiring }: { ratedOhm: number[]; wiring: unknown }) => ({
  ratedOhm: composedRatedOhm(treeOf(wiring, ratedOhm.length), byPosition(ratedOhm)),
})

holdRows('load', {
  two: composed,
  'series-parallel-': composed,
  unequal: shared,
  three: shared,
  nested: shared,
  // The row is a range of factors of the rated value; ours must lie in it, and 8 ohm must read about 7.
  'meter-reading': ({ ratedOhm }) => {
    const ours = DC_SHARE_OF_RATED * ratedOhm
    return { dcReadingOhm: [Math.min(ours, 5.6), Math.max(ours, 7.36)] }
  },
  'meter-two-8-parallel': ({ dcOhm, wiring, leadOhm }) => ({
    meterOhm: meterReadingOhm(treeOf(wiring, dcOhm.length), byPosition(dcOhm), leadOhm),
  }),
  'rated-': ({ ratedOhm }) => ({ lowestModulusOhm: lowestOfRatedOhm(ratedOhm) }),
  'rated-from-minimum-': ({ lowestModulusOhm, ratedChoicesOhm }) => ({
    ratedOhm: ratedFromMinimumOhm(lowestModulusOhm, ratedChoicesOhm),
  }),
  'rated-4-peak-current': ({ ratedOhm, supplyVoltageV, output }) => ({
    peakCurrentA: peakCurrentA(
      { output, outputResistanceOhm: 0, largestDuty: 1 },
      supplyVoltageV,
      lowestOfRatedOhm(ratedOhm),
    ),
  }),
})

test('an 8 ohm driver reads about 7 ohm (common practice)', () => {
  expect(DC_SHARE_OF_RATED * 8).toBeCloseTo(7, 9)
})

const FREQUENCIES = Float64Array.of(20, 100, 453, 2000, 12_000)

const driverArbitrary = fc.record({
  re: fc.double({ min: 0.5, max: 60, noNaN: true }),
  im: fc.double({ min: -40, max: 80, noNaN: true }),
})

const { tree: wiringArbitrary } = fc.letrec<{ tree: Wiring; part: Wiring }>((tie) => ({
  tree: fc.oneof(
    { maxDepth: 4, withCrossShrink: true },
    tie('part'),
    fc.record({ series: fc.array(tie('tree'), { minLength: 1, maxLength: 4 }) }),
    fc.record({ parallel: fc.array(tie('tree'), { minLength: 1, maxLength: 4 }) }),
  ),
  part: fc.oneof(
    fc.constantFrom('a', 'b'),
    fc.record({ resistorOhm: fc.double({ min: 0.001, max: 1e6, noNaN: true }) }),
    fc.record({ inductorMh: fc.double({ min: 0.0001, max: 1000, noNaN: true }) }),
    fc.record({
      inductorMh: fc.double({ min: 0.0001, max: 1000, noNaN: true }),
      resistanceOhm: fc.double({ min: 0, max: 1000, noNaN: true }),
    }),
    fc.record({ capacitorUf: fc.double({ min: 0.0001, max: 1e6, noNaN: true }) }),
  ),
}))

/** The same tree by mathjs, one frequency at a time, with ideal parts. */
function independent(wiring: Wiring, drivers: Record<string, Complex>, hertz: number): Complex {
  const of = (branch: Wiring) => independent(branch, drivers, hertz)
  if (typeof wiring === 'string') return drivers[wiring]!
  if ('series' in wiring) return wiring.series.map(of).reduce((a, b) => add(a, b))
  if ('parallel' in wiring) {
    const one = complex(1, 0)
    const admittance = wiring.parallel
      .map((branch) => divide(one, of(branch)) as Complex)
      .reduce((a, b) => add(a, b))
    return divide(one, admittance) as Complex
  }
  const jOmega = complex(0, 2 * Math.PI * hertz)
  if ('resistorOhm' in wiring) return complex(wiring.resistorOhm, 0)
  if ('inductorMh' in wiring)
    return add(complex(wiring.resistanceOhm ?? 0, 0), multiply(jOmega, wiring.inductorMh / 1000) as Complex)
  return divide(complex(1, 0), multiply(jOmega, wiring.capacitorUf / 1e6) as Complex) as Complex
}

describe('any tree', () => {
  const spread = (value: { re: number; im: number }): ComplexCurve => ({
    re: FREQUENCIES.map(() => value.re),
    im: FREQUENCIES.map(() => value.im),
  })

  test('agrees with the complex numbers of mathjs, apart from the sharp top of an ideal resonance', () => {
    fc.assert(
      fc.property(wiringArbitrary, driverArbitrary, driverArbitrary, (wiring, a, b) => {
        const impedances = new Map([
          ['a', spread(a)],
          ['b', spread(b)],
        ])
        const { re, im } = solveNetwork(wiring, impedances, FREQUENCIES)
        const drivers = { a: complex(a.re, a.im), b: complex(b.re, b.im) }
        FREQUENCIES.forEach((hertz, i) => {
          const expected = independent(wiring, drivers, hertz)
          const modulus = Math.hypot(expected.re, expected.im)
          const isResonance = Math.abs(expected.im) > 1e3 * expected.re
          const slack = (isResonance ? 0.02 : 2e-3) * modulus + 1e-9
          expect(Math.hypot(re[i]! - expected.re, im[i]! - expected.im)).toBeLessThanOrEqual(slack)
        })
      }),
      { seed: 20_260_101, numRuns: 400 },
    )
  })

  test('is passive: its resistance is never negative, and no driver gets more power than the amplifier gives', () => {
    fc.assert(
      fc.property(wiringArbitrary, driverArbitrary, driverArbitrary, (wiring, a, b) => {
        const impedances = new Map([
          ['a', spread(a)],
          ['b', spread(b)],
        ])
        const network = solveNetwork(wiring, impedances, FREQUENCIES)
        FREQUENCIES.forEach((_, i) => {
          expect(network.re[i]).toBeGreaterThan(0)
          const powers = driverShares(network, impedances, FREQUENCIES, i).map(({ powerShare }) => powerShare)
          const total = powers.reduce((sum, power) => sum + power, 0)
          expect(total).toBeLessThanOrEqual(1 + 1e-6)
        })
      }),
      { seed: 20_260_102, numRuns: 300 },
    )
  })

  test('of drivers alone shares the power out to the last', () => {
    const { tree } = fc.letrec<{ tree: Wiring }>((tie) => ({
      tree: fc.oneof(
        { maxDepth: 3 },
        fc.constantFrom('a', 'b'),
        fc.record({ series: fc.array(tie('tree'), { minLength: 1, maxLength: 4 }) }),
        fc.record({ parallel: fc.array(tie('tree'), { minLength: 1, maxLength: 4 }) }),
      ),
    }))
    fc.assert(
      fc.property(tree, driverArbitrary, driverArbitrary, (wiring, a, b) => {
        const impedances = new Map([
          ['a', spread(a)],
          ['b', spread(b)],
        ])
        const network = solveNetwork(wiring, impedances, FREQUENCIES)
        const shares = driverShares(network, impedances, FREQUENCIES, 2)
        expect(shares.reduce((sum, { powerShare }) => sum + powerShare, 0)).toBeCloseTo(1, 9)
      }),
      { seed: 20_260_103, numRuns: 300 },
    )
  })

  test('an ideal coil and capacitor in resonance stay finite', () => {
    // 1 mH and 25.330 uF resonate at 1 kHz.
    const farads = 1 / ((2 * Math.PI * 1000) ** 2 * 1e-3)
    const trap: Wiring = { series: [{ inductorMh: 1 }, { capacitorUf: farads * 1e6 }] }
    const tank: Wiring = { parallel: [{ inductorMh: 1 }, { capacitorUf: farads * 1e6 }] }
    for (const wiring of [trap, tank, { parallel: [trap, tank] }, { series: [trap, tank] }]) {
      const { re, im } = solveNetwork(wiring, new Map(), ONE_POINT)
      expect(Number.isFinite(re[0]) && Number.isFinite(im[0])).toBe(true)
      expect(re[0]).toBeGreaterThan(0)
    }
  })

  test('the lead takes its share of the voltage: 1 of 5 ohm leaves four fifths', () => {
    const { places, re } = solveNetwork('a', resistances([{ id: 'a', impedanceOhm: 4 }]), ONE_POINT, 1)
    expect(re[0]).toBeCloseTo(5, 12)
    expect(places[0]?.re[0]).toBeCloseTo(0.8, 12)
  })
})
