import { expect, it } from 'vitest'
import { driverMeasurement } from '../../../src/core/measurement/driver-measurement.ts'
import { isRefusal } from '../../../src/core/outcome.ts'
import { randomFrom } from '../../../src/core/shop/layout/random.ts'
import { normal } from '../../outside/normal.ts'

const SEED = 20_261_125

/** Impedance of a driver by Small 1972, written here anew: Re + jwLe + Res/(1 + jQms(f/fs - fs/f)). */
function impedance(hz: number): { ohm: number; deg: number } {
  const [re, le, res, qms, fs] = [6, 0.0003, 30, 4, 80]
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

it('a lead above every reading is refused at its place', () => {
  const freeAir = { frequencyHz: HZ, impedanceOhm: HZ.map((hz) => impedance(hz).ohm) }
  const result = driverMeasurement({ drivers: [{ ...driver, leadOhm: 7, freeAir }] })
  expect(isRefusal(result) && result.faults).toEqual([
    { at: '/drivers/0/leadOhm', message: expect.stringContaining('lowest reading') },
  ])
})
