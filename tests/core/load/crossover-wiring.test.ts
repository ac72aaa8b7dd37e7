import { type Complex, complex, divide, evaluate } from 'mathjs'
import { describe, expect, it } from 'vitest'
import { loadInBox } from '../../../src/core/design/load-in-box.ts'
import { trebleIndex } from '../../../src/core/load/crossover-wiring.ts'
import { isRefusal } from '../../../src/core/outcome.ts'
import type { Driver } from '../../../src/schema/driver.ts'
import type { LoadImpedanceRequest } from '../../../src/schema/load-impedance.ts'

const bass: Driver = { id: 'bass', parameters: { reOhm: 8 } }
const treble: Driver = { id: 'treble', sharesBox: false, parameters: { reOhm: 8 } }

function outcome(request: LoadImpedanceRequest) {
  const result = loadInBox(request)
  if (isRefusal(result)) throw new Error(result.faults.map(({ message }) => message).join(' '))
  return result
}

const modulus = (z: Complex): number => Math.hypot(z.re, z.im)
const CORNER_HZ = 3000
const W = 2 * Math.PI * CORNER_HZ
/** Impedance by a formula of the branch in mathjs complex numbers, which is not the code under test. */
const beside = (low: string, high: string, scope: object) => {
  const [a, b]: [Complex, Complex] = [evaluate(low, { ...scope }), evaluate(high, { ...scope })]
  return modulus(complex(String(divide(1, evaluate('1/a + 1/b', { a, b })))))
}

describe('two drivers of which only a crossover is wished', () => {
  // Capacitors of the E12 series: 6.63 uF becomes 6.8, and 3.32 becomes 3.3 (textbook formulas).
  it('of first order see coil and capacitor in series with them', () => {
    const { sections, assumptions } = outcome({
      drivers: [bass, treble],
      crossover: { cornerHz: CORNER_HZ },
      curve: { fromHz: CORNER_HZ / 4, toHz: CORNER_HZ * 4, points: 5 },
    })
    sections.loadCurve.frequencyHz.forEach((hz, i) => {
      const scope = { w: 2 * Math.PI * hz, R: 8, L: 8 / W, C: 6.8e-6 }
      const expected = beside('R + i*w*L', 'R + 1/(i*w*C)', scope)
      expect(sections.loadCurve.impedanceOhm[i]).toBeCloseTo(expected, 6)
    })
    const told = assumptions.map(({ at }) => at)
    expect(told).toEqual(expect.arrayContaining(['/wiring', '/crossover/coilResistanceOhm']))
    // Nothing is said of parts that nobody wrote.
    expect(told.filter((at) => at.startsWith('/wiring/'))).toEqual([])
  })

  it('of second order see the other part across the driver as well', () => {
    const { sections } = outcome({
      drivers: [treble, bass],
      crossover: { cornerHz: CORNER_HZ, order: 2, coilResistanceOhm: 0.5 },
      curve: { fromHz: CORNER_HZ / 4, toHz: CORNER_HZ * 4, points: 5 },
    })
    sections.loadCurve.frequencyHz.forEach((hz, i) => {
      const scope = { w: 2 * Math.PI * hz, R: 8, L: 16 / W, C: 3.3e-6, r: 0.5 }
      const expected = beside('r + i*w*L + 1/(1/R + i*w*C)', '1/(i*w*C) + 1/(1/R + 1/(r + i*w*L))', scope)
      expect(sections.loadCurve.impedanceOhm[i]).toBeCloseTo(expected, 4)
    })
    // f = 1/(2 pi sqrt(L C)) with the E12 capacitor.
    const [high, parts] = sections.crossover
    expect(high?.coilLossDb).toBeNull()
    expect(parts?.cornerWithItHz).toBeCloseTo(1 / (2 * Math.PI * Math.sqrt((16 / W) * 3.3e-6)), 6)
    // A divider of 0.5 ohm and 8 ohm.
    expect(parts?.coilLossDb).toBeCloseTo(20 * Math.log10(8.5 / 8), 9)
  })

  it('take in their own bands what their resistance takes at the voltage of the amplifier', () => {
    const { shares } = outcome({ drivers: [bass, treble], crossover: { cornerHz: CORNER_HZ } }).sections
    for (const { powerAtVoltW } of shares) expect(powerAtVoltW).toBeCloseTo(1 / 8, 2)
  })

  it('with a pad take less: 6 dB are a quarter of the power, and the heat stays in the pad', () => {
    const { shares, crossover } = outcome({
      drivers: [bass, treble],
      crossover: { cornerHz: CORNER_HZ, attenuationDb: 20 * Math.log10(2) },
      amplifier: { supplyVoltageV: 12, outputResistanceOhm: 0 },
    }).sections
    const taken = shares.find(({ driver }) => driver === 'treble')?.powerAtVoltW ?? 0
    expect(32 * taken).toBeCloseTo(1, 1)
    // 12 V of swing on 8 ohm are 9 W: half of it in the series part, a quarter in the part across.
    const pad = crossover.find(({ driver }) => driver === 'treble')
    expect(pad?.padSeriesW).toBeCloseTo(4.5, 9)
    expect(pad?.padShuntW).toBeCloseTo(2.25, 9)
    expect(pad?.padRatingW).toBe(5)
  })

  it('still have to be wired when it cannot be told which plays the treble', () => {
    const result = loadInBox({
      drivers: [bass, { ...bass, id: 'other' }],
      crossover: { cornerHz: CORNER_HZ },
    })
    expect(isRefusal(result) && result.faults.map(({ at }) => at)).toEqual(['/wiring'])
  })
})

it('the treble is played by the closed back, else by the higher resonance', () => {
  const of = (fsHz: number | undefined, sharesBox = true): Driver => ({
    id: String(fsHz),
    sharesBox,
    parameters: fsHz === undefined ? {} : { fsHz },
  })
  expect(trebleIndex([of(60), of(900)])).toBe(1)
  expect(trebleIndex([of(60, false), of(900)])).toBe(0)
  expect(trebleIndex([of(60), of(60)])).toBeUndefined()
  expect(trebleIndex([of(60), of(undefined)])).toBeUndefined()
  expect(trebleIndex([of(60), of(90), of(900)])).toBeUndefined()
})
