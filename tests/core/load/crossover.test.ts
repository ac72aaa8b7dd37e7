import { expect, it } from 'vitest'
import type { ComplexCurve } from '../../../src/core/complex-curve.ts'
import { loadInBox } from '../../../src/core/design/load-in-box.ts'
import { firstOrder, pad, secondOrder, zobel } from '../../../src/core/load/crossover.ts'
import { solveNetwork } from '../../../src/core/load/network.ts'
import { speakerLead } from '../../../src/core/power/cable.ts'
import { cornerHz } from '../../../src/core/power/coupling.ts'
import { E12, nearestPreferred } from '../../../src/core/power/preferred-values.ts'
import type { Wiring } from '../../../src/schema/wiring.ts'
import { holdRows } from '../power/hold-rows.ts'

const resistor = (ohms: number, frequencyHz: Float64Array): ComplexCurve => ({
  re: frequencyHz.map(() => ohms),
  im: frequencyHz.map(() => 0),
})

const voiceCoil = (reOhm: number, leMh: number, frequencyHz: Float64Array): ComplexCurve => ({
  re: frequencyHz.map(() => reOhm),
  im: frequencyHz.map((hertz) => 2 * Math.PI * hertz * leMh * 1e-3),
})

const decibels = ({ re, im }: ComplexCurve): number[] =>
  Array.from(re, (value, i) => 20 * Math.log10(Math.hypot(value, im[i]!)))

/** Voltage of the one driver "d" of a network over that of the amplifier. */
function transfer(wiring: Wiring, driver: ComplexCurve, frequencyHz: Float64Array): ComplexCurve {
  return solveNetwork(wiring, new Map([['d', driver]]), frequencyHz).places[0]!
}

const combined = (a: ComplexCurve, b: ComplexCurve, sign: 1 | -1): ComplexCurve => ({
  re: a.re.map((value, i) => value + sign * b.re[i]!),
  im: a.im.map((value, i) => value + sign * b.im[i]!),
})

holdRows('crossover', {
  'first-order-': (inputs) => ({ ...firstOrder(inputs.cornerHz, inputs.loadOhm) }),
  'second-order-': (inputs) => ({ ...secondOrder(inputs.cornerHz, inputs.loadOhm, inputs.kind) }),
  'lr2-response': (inputs) => {
    const frequencyHz = Float64Array.from(inputs.frequencyHz as number[])
    const load = resistor(inputs.loadOhm, frequencyHz)
    const { capacitorUf, inductorMh } = secondOrder(inputs.cornerHz, inputs.loadOhm, 'Linkwitz-Riley')
    const low = transfer(
      { series: [{ inductorMh }, { parallel: [{ capacitorUf }, 'd'] }] },
      load,
      frequencyHz,
    )
    const high = transfer(
      { series: [{ capacitorUf }, { parallel: [{ inductorMh }, 'd'] }] },
      load,
      frequencyHz,
    )
    return {
      lowPassDb: decibels(low),
      highPassDb: decibels(high),
      sumInvertedDb: decibels(combined(low, high, -1)),
      sumInPhaseAtCornerNull: decibels(combined(low, high, 1))[1]! < -60,
    }
  },
  'zobel-': ({ reOhm, leMh }) => ({ ...zobel(reOhm, leMh) }),
  'zobel-flat': (inputs) => {
    const frequencyHz = Float64Array.from(inputs.frequencyHz as number[])
    const driver = voiceCoil(inputs.reOhm, inputs.leMh, frequencyHz)
    const { resistorOhm, capacitorUf } = inputs
    const wiring: Wiring = { parallel: ['d', { series: [{ resistorOhm }, { capacitorUf }] }] }
    const { re, im } = solveNetwork(wiring, new Map([['d', driver]]), frequencyHz)
    return { impedanceOhm: Array.from(re, (value, i) => Math.hypot(value, im[i]!)) }
  },
  'zobel-needed': (inputs) => {
    const frequencyHz = Float64Array.from(inputs.frequencyHz as number[])
    const driver = voiceCoil(inputs.reOhm, inputs.leMh, frequencyHz)
    const { resistorOhm, capacitorUf } = zobel(inputs.reOhm, inputs.leMh)
    const { inductorMh } = inputs
    const corrected: Wiring = { parallel: ['d', { series: [{ resistorOhm }, { capacitorUf }] }] }
    return {
      withoutZobelDb: decibels(transfer({ series: [{ inductorMh }, 'd'] }, driver, frequencyHz)),
      withZobelDb: decibels(transfer({ series: [{ inductorMh }, corrected] }, driver, frequencyHz)),
    }
  },
  'coil-dcr-': ({ inductorResistanceOhm, loadOhm, reOhm }) => ({
    ...speakerLead(inductorResistanceOhm, loadOhm, reOhm),
  }),
  'pad-': ({ attenuationDb, loadOhm }) => ({ ...pad(attenuationDb, loadOhm) }),
  'crossover-stock-value': (inputs) => {
    const capacitorUf = nearestPreferred(firstOrder(inputs.cornerHz, inputs.loadOhm).capacitorUf, E12)
    return { capacitorUf, cornerWithItHz: cornerHz(capacitorUf, inputs.loadOhm) }
  },
})

it('the load of a crossover does not jump with the first trace of inductance', () => {
  // Small 1972: a tweeter of Qms 3 and Qes 0.8 at twice its resonance is 6 + 22.5 / (1 + 4.5 j).
  const motion = 22.5 / (1 + 4.5 ** 2)
  const alone = Math.hypot(6 + motion, 4.5 * motion)
  const loadOhm = (leMh?: number) => {
    const parameters = { fsHz: 1500, qms: 3, qes: 0.8, reOhm: 6, ...(leMh !== undefined && { leMh }) }
    const outcome = loadInBox({ drivers: [{ id: 't', parameters }], crossover: { cornerHz: 3000, order: 2 } })
    return 'faults' in outcome ? Number.NaN : outcome.sections.crossover[0]?.loadOhm
  }
  expect(loadOhm()).toBeCloseTo(alone, 9)
  expect(loadOhm(1e-4)).toBeCloseTo(alone, 2)
  expect(loadOhm(0.0011)).toBeCloseTo(alone, 1)
})
