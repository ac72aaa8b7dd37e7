import type { DriverMeasurementRequest } from '../schema/driver-measurement.ts'
import type { ImpedanceSweep } from '../schema/impedance-sweep.ts'

/** So many readings take some fifty milliseconds to fit. */
const MANY_READINGS = 300

/** Whether fitting these sweeps would keep other requests waiting. */
export const areHeavy = (sweeps: readonly ImpedanceSweep[]): boolean =>
  sweeps.reduce((sum, sweep) => sum + readingsOf(sweep), 0) > MANY_READINGS

export const sweepsOf = ({ drivers }: DriverMeasurementRequest): ImpedanceSweep[] =>
  drivers.flatMap(({ freeAir, withMass, inBox }) =>
    [freeAir, withMass?.sweep, inBox?.sweep].filter((sweep) => sweep !== undefined),
  )

const readingsOf = ({ frequencyHz = [], readings, csv = '' }: ImpedanceSweep): number =>
  frequencyHz.length + (readings?.steps.length ?? 0) + csv.split('\n').length - 1
