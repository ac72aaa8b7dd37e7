import { expect, it } from 'vitest'
import { driverMeasurement } from '../../../src/core/measurement/driver-measurement.ts'
import { isRefusal } from '../../../src/core/outcome.ts'
import { randomFrom } from '../../../src/core/shop/layout/random.ts'
import { normal } from '../../outside/normal.ts'

const SEED = 20_261_125

/** Impedance of a driver by Small 1972, written here anew: Re + jwLe + Res/(1 + jQms(f/fs - fs/f)). */
function impedance(hz: number, le = 0.0003): { ohm: number; deg: number } {
  const [re, res, qms, fs] = [6, 30, 4, 80]
  const x = qms * (hz / fs - fs / hz)
  const real = re + res / (1 + x * x)
  const imaginary = 2 * Math.PI * hz * le - (res * x) / (1 + x * x)
  return { ohm: Math.hypot(real, imaginary), deg: (180 / Math.PI) * Math.atan2(imaginary, real) }
}

const HZ = Array.from({ length: 60 }, (_, i) => 20 * 50 ** (i / 59))
const driver = { id: 'a', sdCm2: 50, mmsG: { fromG: 4, toG: 6 } }

it(`a phase without scatter throws out no reading of a modulus with 1 %, seed ${SEED}`, () => {
  const random = randomFrom(SEED)
  const freeAir = {
    frequencyHz: HZ,
    impedanceOhm: HZ.map((hz) => impedance(hz).ohm * (1 + 0.01 * normal(random))),
    phaseDeg: HZ.map((hz) => impedance(hz).deg),
  }
  const result = driverMeasurement({ drivers: [{ ...driver, freeAir }] })
  if (isRefusal(result)) throw new Error(JSON.stringify(result.faults))
  const [measured] = result.sections.measured
  expect(measured?.outliers.length).toBeLessThanOrEqual(1)
  expect(Math.abs((measured?.parameters.fsHz ?? 0) / 80 - 1)).toBeLessThan(0.01)
})

it.each([40, 320, 500, 2000])(
  '%i exact readings of a driver whose coil has no inductance settle it',
  (count) => {
    const frequencyHz = Array.from({ length: count }, (_, i) => 20 * 50 ** (i / (count - 1)))
    const freeAir = { frequencyHz, impedanceOhm: frequencyHz.map((hz) => impedance(hz, 0).ohm) }
    const result = driverMeasurement({ drivers: [{ ...driver, freeAir }] })
    if (isRefusal(result)) throw new Error(JSON.stringify(result.faults))
    const { fsHz, qms, qes, reOhm } = result.sections.measured[0]?.parameters ?? {}
    // The least inductance that the fit knows, 0.1 uH, is 0.01 % of the resistance at 1 kHz.
    expect((fsHz ?? 0) / 80).toBeCloseTo(1, 3)
    expect((qms ?? 0) / 4).toBeCloseTo(1, 3)
    expect((qes ?? 0) / (4 / 5)).toBeCloseTo(1, 3)
    expect((reOhm ?? 0) / 6).toBeCloseTo(1, 3)
  },
)

it('one reading below the lead is a slip and left out, not a lead too long', () => {
  const impedanceOhm = HZ.map((hz, i) => (i === 7 ? 0.01 : impedance(hz).ohm + 0.1))
  const result = driverMeasurement({
    drivers: [{ ...driver, leadOhm: 0.1, freeAir: { frequencyHz: HZ, impedanceOhm } }],
  })
  if (isRefusal(result)) throw new Error(JSON.stringify(result.faults))
  const [measured] = result.sections.measured
  expect(measured?.outliers.map(({ measuredOhm }) => measuredOhm)).toEqual([0.01])
  expect(Math.abs((measured?.parameters.reOhm ?? 0) / 6 - 1)).toBeLessThan(0.001)
})

it('a lead above every reading is refused at its place', () => {
  const freeAir = { frequencyHz: HZ, impedanceOhm: HZ.map((hz) => impedance(hz).ohm) }
  const result = driverMeasurement({ drivers: [{ ...driver, leadOhm: 7, freeAir }] })
  expect(isRefusal(result) && result.faults).toEqual([
    { at: '/drivers/0/leadOhm', message: expect.stringContaining('lowest reading') },
  ])
})
