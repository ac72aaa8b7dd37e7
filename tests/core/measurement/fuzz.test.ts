import fc from 'fast-check'
import { expect, it } from 'vitest'
import { driverMeasurement } from '../../../src/core/measurement/driver-measurement.ts'
import { isRefusal } from '../../../src/core/outcome.ts'
import type { DriverMeasurementRequest } from '../../../src/schema/driver-measurement.ts'
import type { ImpedanceSweep } from '../../../src/schema/impedance-sweep.ts'

const SEED = 20_261_125

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true })

interface Shape {
  fsHz: number
  q: number
  height: number
  re: number
  le: number
  fromHz: number
  span: number
}

/** A curve with one resonance, its readings up to five times off where it is noisy. */
const sweepOf = (shape: fc.Arbitrary<Shape>): fc.Arbitrary<ImpedanceSweep> =>
  fc
    .record({
      shape,
      count: fc.oneof(
        { weight: 1, arbitrary: fc.integer({ min: 3, max: 11 }) },
        { weight: 9, arbitrary: fc.integer({ min: 12, max: 30 }) },
      ),
      noise: fc.array(number(0.2, 5), { minLength: 30, maxLength: 30 }),
      level: fc.constantFrom(0, 0.005, 0.03, 0.03, 1),
      phase: fc.boolean(),
    })
    .map(({ shape: { fsHz, q, height, re, le, fromHz, span }, count, noise, level, phase }) => {
      const frequencyHz = Array.from({ length: count }, (_, i) => fromHz * span ** (i / (count - 1)))
      const z = frequencyHz.map((hz, i) => {
        const detuned = q * (hz / fsHz - fsHz / hz)
        const peak = (re * (height - 1)) / (1 + detuned * detuned)
        const [x, y] = [re + peak, 2 * Math.PI * hz * le - peak * detuned]
        return { ohm: Math.hypot(x, y) * (noise[i] ?? 1) ** level, deg: (Math.atan2(y, x) * 180) / Math.PI }
      })
      const impedanceOhm = z.map(({ ohm }) => Math.min(1e6, ohm))
      return phase
        ? { frequencyHz, impedanceOhm, phaseDeg: z.map(({ deg }) => deg) }
        : { frequencyHz, impedanceOhm }
    })

const wild = fc.record({
  fsHz: number(5, 3000),
  q: number(0.05, 60),
  height: number(1.01, 80),
  re: number(0.1, 300),
  le: number(0, 0.02),
  fromHz: number(1, 200),
  span: number(1.5, 300),
})
/** As of a driver of about 100 Hz, or of the same one with a mass or a box. */
const likely = (fromHz: number, toHz: number) =>
  fc.record({
    fsHz: number(fromHz, toHz),
    q: number(2, 5),
    height: number(4, 8),
    re: fc.constant(5),
    le: fc.constant(2e-4),
    fromHz: number(10, 30),
    span: number(30, 200),
  })
const sweep = (fromHz: number, toHz: number) =>
  sweepOf(fc.oneof({ weight: 9, arbitrary: likely(fromHz, toHz) }, { weight: 1, arbitrary: wild }))

const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined })

const driver = fc.record(
  {
    id: fc.uuid(),
    freeAir: maybe(
      fc.oneof(
        { weight: 9, arbitrary: sweep(90, 110) },
        { weight: 1, arbitrary: fc.record({ csv: fc.string({ minLength: 1 }) }) },
      ),
    ),
    withMass: maybe(fc.record({ massG: fc.oneof(number(0.01, 500), number(2, 8)), sweep: sweep(50, 80) })),
    inBox: maybe(fc.record({ volumeL: fc.oneof(number(0.01, 500), number(1, 8)), sweep: sweep(130, 200) })),
    meterOhm: maybe(fc.oneof(number(0.1, 2000), fc.constant(5))),
    leadOhm: maybe(number(0, 0.2)),
    sdCm2: fc.oneof(number(0.2, 3000), fc.constant(50)),
    dimensions: maybe(
      fc.record({
        surroundDiameterMm: number(5, 600),
        coilDiameterMm: number(4, 200),
        coilHeightMm: number(0.5, 100),
        gapHeightMm: number(0.5, 50),
      }),
    ),
  },
  { requiredKeys: ['id', 'sdCm2'] },
)

const withoutHoles = (value: unknown): DriverMeasurementRequest => JSON.parse(JSON.stringify(value))

function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value]
  if (Array.isArray(value)) return value.flatMap(numbersIn)
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersIn) : []
}

it(`never throws and never answers NaN or Infinity, seed ${SEED}`, () => {
  let answered = 0
  fc.assert(
    fc.property(fc.array(driver, { minLength: 1, maxLength: 2 }), (drivers) => {
      const outcome = driverMeasurement(withoutHoles({ drivers }))
      if (isRefusal(outcome)) {
        expect(outcome.faults.length).toBeGreaterThan(0)
        return
      }
      if (outcome.sections.measured.length > 0) answered++
      expect(numbersIn(outcome).filter((value) => !Number.isFinite(value))).toEqual([])
      for (const { from, value, to } of outcome.sections.measured.flatMap(({ figures }) => figures)) {
        expect(from).toBeLessThanOrEqual(value)
        expect(value).toBeLessThanOrEqual(to)
      }
    }),
    { seed: SEED, numRuns: 200, endOnFailure: true },
  )
  // Some must have come through to the figures.
  expect(answered).toBeGreaterThan(5)
}, 180_000)
