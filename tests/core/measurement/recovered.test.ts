import { describe, expect, it } from 'vitest'
import { driverMeasurement } from '../../../src/core/measurement/driver-measurement.ts'
import { isRefusal } from '../../../src/core/outcome.ts'
import { randomFrom } from '../../../src/core/shop/layout/random.ts'
import type { MeasuredDriver } from '../../../src/schema/driver-measurement.ts'
import {
  type BenchDriver,
  type BenchSweep,
  benchSweep,
  MIDDLE,
  mechanics,
  noisySweep,
  SHARP,
  SMALL,
} from '../../outside/measurement-drivers.ts'

function measure(driver: Omit<MeasuredDriver, 'id'>) {
  const outcome = driverMeasurement({ drivers: [{ id: 'it', ...driver }] })
  if (isRefusal(outcome)) throw new Error(JSON.stringify(outcome.faults))
  const [result] = outcome.sections.measured
  if (result === undefined) throw new Error('nothing measured')
  return { result, findings: outcome.findings }
}

const exact = (sweep: BenchSweep, withPhase: boolean) => noisySweep(sweep, 0, Math.random, withPhase)
const within = (value: number | undefined, truth: number, share: number) =>
  expect(Math.abs((value ?? Number.NaN) / truth - 1), `${value} against ${truth}`).toBeLessThan(share)

const DRIVERS = [
  { name: 'a small one', truth: SMALL, massG: 2, volumeL: 1 },
  { name: 'a middle one', truth: MIDDLE, massG: 8, volumeL: 5 },
  { name: 'a sharp one', truth: SHARP, massG: 20, volumeL: 30 },
]
/** 12, 40 and 200 points from 20 to about 2000 Hz. */
const SWEEPS = ['dec 6 20 1400', 'dec 20 20 1800', 'dec 100 20 1990']
const CASES = DRIVERS.flatMap((driver) =>
  SWEEPS.flatMap((sweep) => [true, false].map((withPhase) => ({ ...driver, sweep, withPhase }))),
)

function expectTruth(parameters: ReturnType<typeof measure>['result']['parameters'], truth: BenchDriver) {
  for (const name of ['fsHz', 'qms', 'qes', 'reOhm', 'leMh', 'vasL', 'sdCm2'] as const)
    within(parameters[name], truth[name], 0.01)
  const { mms, bl } = mechanics(truth)
  within(parameters.mmsG, mms * 1e3, 0.01)
  within(parameters.blTm, bl, 0.01)
}

describe('a driver without noise, from the circuit simulator, is found again within 1 %', () => {
  it.each(CASES)('$name, $sweep, phase $withPhase: by mass, by box and by both', async (given) => {
    const { truth, massG, volumeL, sweep, withPhase } = given
    const read = async (bench: Parameters<typeof benchSweep>[1]) =>
      exact(await benchSweep(truth, bench, sweep), withPhase)
    const freeAir = await read({})
    const withMass = { massG, sweep: await read({ massG }) }
    // Air that moves along on the box makes the cone 5 % heavier there; the compliance must not notice.
    const extraAirG = mechanics(truth).mms * 1e3 * 0.05
    const inBox = { volumeL, sweep: await read({ volumeL, extraAirG }) }
    const { sdCm2 } = truth
    expectTruth(measure({ freeAir, withMass, sdCm2 }).result.parameters, truth)
    expectTruth(measure({ freeAir, inBox, sdCm2 }).result.parameters, truth)
    expectTruth(measure({ freeAir, withMass, inBox }).result.parameters, truth)
  })

  it('with a lossy coil, told by the curve to be one', async () => {
    const truth = { ...MIDDLE, exponent: 0.7 }
    const sweep = exact(await benchSweep(truth, {}, 'dec 30 20 20k'), true)
    const { result } = measure({ freeAir: sweep, sdCm2: truth.sdCm2 })
    expect(result.fit.coil).toBe('lossy')
    within(result.parameters.leExponent, 0.7, 0.01)
    for (const name of ['fsHz', 'qms', 'qes', 'reOhm', 'leMh'] as const)
      within(result.parameters[name], truth[name], 0.01)
  })

  it('with leads in the sweep that are said', async () => {
    const bare = await benchSweep(SMALL, {}, 'dec 20 20 2000')
    const held = bare.ohm.map((ohm, i) => {
      const phase = ((bare.phaseDeg[i] ?? 0) * Math.PI) / 180
      return Math.hypot(ohm * Math.cos(phase) + 0.4, ohm * Math.sin(phase))
    })
    const freeAir = { frequencyHz: bare.frequencyHz, impedanceOhm: held }
    const { result } = measure({ freeAir, leadOhm: 0.4, sdCm2: SMALL.sdCm2 })
    for (const name of ['fsHz', 'qms', 'qes', 'reOhm'] as const)
      within(result.parameters[name], SMALL[name], 0.01)
  })

  it('from voltages across driver and resistor in series, simulated by the divider', async () => {
    const sweep = await benchSweep(SMALL, {}, 'dec 12 30 1000')
    const steps = sweep.frequencyHz.map((frequencyHz, i) => ({
      frequencyHz,
      // 10 mA through both
      driverV: 0.01 * (sweep.ohm[i] ?? 0),
      resistorV: 0.01 * 15,
    }))
    const { result } = measure({ freeAir: { readings: { resistorOhm: 15, steps } }, sdCm2: SMALL.sdCm2 })
    for (const name of ['fsHz', 'qms', 'qes', 'reOhm'] as const)
      within(result.parameters[name], SMALL[name], 0.01)
  })
})

describe('wrong readings', () => {
  const SEED = 4
  it.each([true, false])(
    `two of forty do not spoil it and are named, phase %s, seed ${SEED}`,
    async (withPhase) => {
      const sweep = noisySweep(
        await benchSweep(SMALL, {}, 'dec 20 20 1790'),
        0.01,
        randomFrom(SEED),
        withPhase,
      )
      expect(sweep.frequencyHz).toHaveLength(40)
      const spoiled = sweep.impedanceOhm.map((ohm, i) => (i === 14 ? ohm / 3 : i === 25 ? ohm * 2.5 : ohm))
      const { result, findings } = measure({
        freeAir: { ...sweep, impedanceOhm: spoiled },
        sdCm2: SMALL.sdCm2,
      })
      expect(result.outliers.map(({ frequencyHz }) => frequencyHz)).toEqual([
        sweep.frequencyHz[14],
        sweep.frequencyHz[25],
      ])
      within(result.parameters.fsHz, SMALL.fsHz, 0.01)
      within(result.parameters.qts, (SMALL.qms * SMALL.qes) / (SMALL.qms + SMALL.qes), 0.03)
      expect(findings.map(({ code }) => code)).toContain('measurement-outliers')
    },
  )
})
