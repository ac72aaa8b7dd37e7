import { LINE_END } from '../core/measurement/sweep-text.ts'
import type { DriverMeasurementRequest } from '../schema/driver-measurement.ts'
import type { ImpedanceSweep } from '../schema/impedance-sweep.ts'

/** So many readings take some fifty milliseconds to fit, and a few times that where one of them is wild. */
const MANY_READINGS = 100

/** Whether fitting the sweeps of these drivers would keep other requests waiting. */
export function areHeavySweeps({ drivers }: DriverMeasurementRequest): boolean {
  const sweeps = drivers.flatMap(({ freeAir, withMass, inBox }) =>
    [freeAir, withMass?.sweep, inBox?.sweep].filter((sweep) => sweep !== undefined),
  )
  return sweeps.reduce((sum, sweep) => sum + readingsOf(sweep), 0) > MANY_READINGS
}

const readingsOf = ({ frequencyHz = [], readings, csv = '' }: ImpedanceSweep): number =>
  frequencyHz.length + (readings?.steps.length ?? 0) + csv.split(LINE_END).length - 1
