import { expect, it } from 'vitest'
import { driverMeasurementAnswer } from '../../src/api/driver-measurement/answer.ts'
import { barePaperCone } from '../../src/api/driver-measurement/example.ts'
import { driverMeasurement } from '../../src/core/measurement/driver-measurement.ts'
import { isRefusal } from '../../src/core/outcome.ts'

/** The impedance of a driver by R. H. Small, 1972: Re + jωLe + Res/(1 + j Qms (f/fs − fs/f)). */
function impedanceOhm(hz: number): number {
  const q = 3.2 * (hz / 124 - 124 / hz)
  const motional = (3.4 * 3.2) / 0.55 / (1 + q * q)
  return Math.hypot(3.4 + motional, 2 * Math.PI * hz * 6e-5 - q * motional)
}
const frequencyHz = Array.from({ length: 40 }, (_, i) => 30 * (1000 / 30) ** (i / 39))

it('does not promise more than anybody can measure, from readings without any noise', () => {
  const [driver] = barePaperCone.drivers
  const freeAir = { frequencyHz, impedanceOhm: frequencyHz.map(impedanceOhm) }
  const outcome = driverMeasurement({ drivers: [{ id: driver?.id ?? '', freeAir, sdCm2: 28 }] })
  if (isRefusal(outcome)) throw new Error(JSON.stringify(outcome.faults))
  expect(driverMeasurementAnswer(outcome.sections)).toContain(
    'resonance 124 Hz (give or take less than 0.1 %), total Q 0.469 (give or take less than 0.1 %)',
  )
})
