import { describe, expect, it } from 'vitest'
import { barePaperCone } from '../../../src/api/driver-measurement/example.ts'
import { completeDriver } from '../../../src/core/driver/complete.ts'
import { contradiction } from '../../../src/core/driver/contradiction.ts'
import { driverMeasurement } from '../../../src/core/measurement/driver-measurement.ts'
import { USABLE } from '../../../src/core/measurement/usable.ts'
import { isRefusal } from '../../../src/core/outcome.ts'
import { DriverParameters } from '../../../src/schema/driver.ts'
import type { DriverMeasurementRequest, MeasuredDriver } from '../../../src/schema/driver-measurement.ts'
import {
  type BenchDriver,
  benchSweep,
  mechanics,
  noisySweep,
  SMALL,
} from '../../outside/measurement-drivers.ts'

function answered(request: DriverMeasurementRequest) {
  const outcome = driverMeasurement(request)
  if (isRefusal(outcome)) throw new Error(JSON.stringify(outcome.faults))
  return outcome
}
const faultsOf = (driver: Omit<MeasuredDriver, 'id'>): string[] => {
  const outcome = driverMeasurement({ drivers: [{ id: 'it', ...driver }] })
  return isRefusal(outcome) ? outcome.faults.map(({ at, message }) => `${at} ${message}`) : []
}
const exact = async (truth: BenchDriver, bench = {}, sweep = 'dec 20 20 2000') =>
  noisySweep(await benchSweep(truth, bench, sweep), 0, Math.random, false)

describe('measured parameters', () => {
  const { sections } = answered(barePaperCone)
  const [result] = sections.measured
  const parameters = result?.parameters ?? {}

  it('complete a driver of any other calculation as they are, without contradiction', () => {
    expect(completeDriver(parameters, '')).toMatchObject({ assumptions: [] })
    expect(contradiction(parameters)).toBeNull()
  })

  it('lie in their intervals, and the intervals hold the driver that was simulated', () => {
    const truth: Partial<Record<string, number>> = { ...SMALL, mmsG: mechanics(SMALL).mms * 1e3 }
    for (const { figure, value, from, to } of result?.figures ?? []) {
      expect(from).toBeLessThanOrEqual(value)
      expect(to).toBeGreaterThanOrEqual(value)
      const is = truth[figure]
      if (is === undefined) continue
      expect(from, figure).toBeLessThanOrEqual(is)
      expect(to, figure).toBeGreaterThanOrEqual(is)
    }
  })

  it('blame the cone area for Vas: twice the doubt of the area, four times that of the diameter', () => {
    const row = (name: string) => result?.figures.find(({ figure }) => figure === name)
    expect(row('vasL')?.mainSource).toBe('cone-area')
    expect((row('vasL')?.uncertaintyPercent ?? 0) / (row('sdCm2')?.uncertaintyPercent ?? 1)).toBeCloseTo(2, 1)
    expect(result?.next[0]).toMatchObject({ shrinks: 'vasL' })
  })

  it('say what their doubt does to the closed box: Qtc goes with Qts, and with half of Vas share', () => {
    const qts = result?.effects.find(({ figure }) => figure === 'qts')
    const { qts: q = 0, vasL = 0 } = parameters
    const qtc = q * Math.sqrt(1 + vasL / 1.2)
    expect((qts?.qtcChange ?? 0) / qtc).toBeCloseTo((qts?.uncertaintyPercent ?? 0) / 100, 5)
    const vas = result?.effects.find(({ figure }) => figure === 'vasL')
    // d ln Qtc = ½ α/(1 + α) d ln Vas
    const alpha = vasL / 1.2
    expect((vas?.qtcChange ?? 0) / qtc).toBeCloseTo(
      ((0.5 * alpha) / (1 + alpha)) * ((vas?.uncertaintyPercent ?? 0) / 100),
      3,
    )
  })

  it('may be what the schema of a driver takes', () => {
    const properties = new Map(
      Object.entries(DriverParameters.properties).map(([name, schema]) => [
        name,
        schema as { minimum?: number; maximum?: number },
      ]),
    )
    for (const [name, [from, to]] of Object.entries(USABLE)) {
      expect(properties.get(name)?.minimum, name).toBe(from)
      expect(properties.get(name)?.maximum, name).toBe(to)
    }
  })
})

it('the steps of a plan are words of the bench, not names of a program', () => {
  const [plan] = answered({ drivers: [{ id: 'new' }] }).sections.plan
  const steps = plan?.steps.join('\n') ?? ''
  expect(steps).toContain('middle of the surround')
  expect(steps).not.toMatch(/[a-z]\.[a-z]|[a-z]{2}[A-Z]/)
})

describe('a sweep that cannot be of a driver is refused', () => {
  const sdCm2 = SMALL.sdCm2

  it('when it begins above the peak', async () => {
    expect(faultsOf({ freeAir: await exact(SMALL, {}, 'dec 20 200 900'), sdCm2 })).toEqual([
      expect.stringMatching(
        /^\/drivers\/0\/freeAir the sweep from 200 Hz .* misses the peak .* below 200 Hz/,
      ),
    ])
  })

  it('when it ends below the peak', async () => {
    expect(faultsOf({ freeAir: await exact(SMALL, {}, 'dec 20 20 110'), sdCm2 })).toEqual([
      expect.stringMatching(/misses the peak .* rises to the end; go on above/),
    ])
  })

  it('when it is flat, as of a resistor', async () => {
    const { frequencyHz, impedanceOhm } = await exact(SMALL)
    expect(faultsOf({ freeAir: { frequencyHz, impedanceOhm: impedanceOhm.map(() => 8) }, sdCm2 })).toEqual([
      expect.stringMatching(/misses the peak .* hardly changes, as that of a resistor/),
    ])
  })

  it('when it is in kilohm: the peak is lower than any coil', async () => {
    const sweep = await exact(SMALL)
    const kilohm = { ...sweep, impedanceOhm: sweep.impedanceOhm.map((ohm) => ohm / 1000) }
    expect(faultsOf({ freeAir: kilohm, sdCm2 })).toEqual([
      expect.stringMatching(/^\/drivers\/0\/freeAir never rises above 0\.0\d+ ohm.*0\.008 kohm is 8 ohm/),
    ])
    expect(faultsOf({ freeAir: sweep, withMass: { massG: 2, sweep: kilohm }, sdCm2 })).toEqual([
      expect.stringMatching(/^\/drivers\/0\/withMass\/sweep never rises above/),
    ])
  })

  it('when it is in kilohertz, or its columns are swapped', async () => {
    const { frequencyHz, impedanceOhm } = await exact(SMALL)
    const kilohertz = { frequencyHz: frequencyHz.map((hz) => hz / 1000), impedanceOhm }
    const swapped = { frequencyHz: impedanceOhm, impedanceOhm: frequencyHz }
    expect(faultsOf({ freeAir: kilohertz, sdCm2 })[0]).toMatch(/kilohertz/)
    expect(faultsOf({ freeAir: swapped, sdCm2 })[0]).toMatch(/swapped/)
  })

  it('when the sweep with the mass is the one without, or the two are exchanged', async () => {
    const [free, heavy] = [await exact(SMALL), await exact(SMALL, { massG: 2 })]
    const said = /not below the .* exchanged/
    expect(faultsOf({ freeAir: free, withMass: { massG: 2, sweep: free }, sdCm2 })[0]).toMatch(said)
    expect(faultsOf({ freeAir: heavy, withMass: { massG: 2, sweep: free }, sdCm2 })[0]).toMatch(said)
  })

  it('when the box does not raise the resonance', async () => {
    const free = await exact(SMALL)
    expect(faultsOf({ freeAir: free, inBox: { volumeL: 1, sweep: free }, sdCm2 })[0]).toMatch(/not above the/)
  })

  it('when the mass is said in kilograms', async () => {
    const [free, heavy] = [await exact(SMALL), await exact(SMALL, { massG: 2 })]
    expect(faultsOf({ freeAir: free, withMass: { massG: 0.01, sweep: heavy }, sdCm2 })[0]).toMatch(
      /mmsG as .* no driver has/,
    )
  })

  it('with every fault of every driver at once', async () => {
    const free = await exact(SMALL)
    const outcome = driverMeasurement({
      drivers: [
        { id: 'a', freeAir: { csv: 'nothing' } },
        { id: 'b', freeAir: free },
      ],
    })
    expect(isRefusal(outcome) && outcome.faults.map(({ at }) => at)).toEqual([
      '/drivers/0/freeAir/csv',
      '/drivers/0/dimensions/surroundDiameterMm',
      '/drivers/1/dimensions/surroundDiameterMm',
    ])
  })

  it('with two drivers of one name, and a second sweep without the first', async () => {
    const free = await exact(SMALL)
    const outcome = driverMeasurement({
      drivers: [
        { id: 'a', freeAir: free, sdCm2 },
        { id: 'a', inBox: { volumeL: 1, sweep: free } },
      ],
    })
    expect(isRefusal(outcome) && outcome.faults.map(({ at }) => at)).toEqual([
      '/drivers/1/id',
      '/drivers/1/freeAir',
    ])
  })
})

describe('several drivers', () => {
  it('are paired so that like goes with like, all pairs scored', async () => {
    const other = { ...SMALL, fsHz: 150, qes: 0.7 }
    const drivers = await Promise.all(
      [SMALL, other, { ...SMALL, fsHz: 126 }, { ...other, fsHz: 148 }].map(async (truth, i) => {
        const withMass = { massG: 2, tolerancePercent: 1, sweep: await exact(truth, { massG: 2 }) }
        return { id: `d${i}`, freeAir: await exact(truth), withMass, sdCm2: 28 }
      }),
    )
    const { sections, findings } = answered({ drivers })
    expect(sections.pairs).toHaveLength(6)
    const chosen = sections.pairs
      .filter((pair) => pair.chosen)
      .map(({ first, second }) => `${first} ${second}`)
    expect(chosen.toSorted()).toEqual(['d0 d2', 'd1 d3'])
    const near = sections.pairs.find(({ first, second }) => first === 'd0' && second === 'd2')
    // ln(126/124)
    expect(near?.fsPercent).toBeCloseTo(1.6, 1)
    expect(findings.filter(({ code }) => code === 'measurement-drivers-match')).toHaveLength(2)
  })

  it('that are no pair are said to be none', async () => {
    const other = { ...SMALL, fsHz: 240, qes: 1.2, reOhm: 7 }
    const drivers = [
      { id: 'a', freeAir: await exact(SMALL), sdCm2: 28 },
      { id: 'b', freeAir: await exact(other), sdCm2: 28 },
    ]
    const { findings } = answered({ drivers })
    expect(findings.find(({ code }) => code === 'measurement-drivers-of-two-kinds')).toMatchObject({
      severity: 'blocker',
      at: '/drivers/1',
    })
  })
})

describe('a driver without a sweep gets a plan', () => {
  const { sections, cautions, assumptions } = answered({
    drivers: [{ id: 'it', dimensions: { surroundDiameterMm: 60 }, ratedImpedanceOhm: 4 }],
  })
  const [plan] = sections.plan

  it('that keeps the driver safe: little voltage at the peak, and cautions', () => {
    const { generatorV = 0, resistorOhm = 0, driverV = 1 } = plan ?? {}
    // The divider at a peak of seven times 3.4 ohm.
    expect((generatorV * 7 * 3.4) / (7 * 3.4 + resistorOhm)).toBeCloseTo(driverV, 6)
    expect(driverV).toBeLessThanOrEqual(0.1)
    expect(cautions.join(' ')).toMatch(/Unplug the supply/)
  })

  it('that covers the resonances such a driver may have, in order, with a resistor that is sold', () => {
    const { frequencyHz = [], expectedFsHz = 0, resistorOhm } = plan ?? {}
    expect(frequencyHz[0]).toBeLessThan(expectedFsHz / 4)
    expect(frequencyHz.toSorted((a, b) => a - b)).toEqual(frequencyHz)
    // 2.5 · 0.85 · 4 ohm = 8.5; E12 has 8.2. IEC 60063.
    expect(resistorOhm).toBe(8.2)
  })

  it('and says what was filled in', () => {
    expect(assumptions.map(({ at }) => at)).toEqual([
      '/drivers/0/meterOhm',
      '/drivers/0/freeAir',
      '/drivers/0/withMass/massG',
    ])
  })
})
