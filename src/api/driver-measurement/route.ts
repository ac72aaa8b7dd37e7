import { driverMeasurement as measured } from '../../core/measurement/driver-measurement.ts'
import { DriverMeasurementRequest } from '../../schema/driver-measurement.ts'
import { driverMeasurementSections } from '../../schema/driver-measurement-sections.ts'
import { measuredDriverPicture } from '../../views/chart/measured-impedance.ts'
import { calculation } from '../calculation.ts'
import { areHeavySweeps } from '../heavy-sweeps.ts'
import type { Aside } from '../heavy-work.ts'
import { remembered } from '../recent-answers.ts'
import { driverMeasurementAnswer } from './answer.ts'
import { barePaperCone } from './example.ts'

export const driverMeasurement = calculation({
  views: { svg: { impedance: ({ answer }) => measuredDriverPicture(answer.measured) } },
  path: '/v1/driver-measurement',
  operationId: 'driverMeasurement',
  summary: 'Thiele-Small parameters of bare drivers from impedance sweeps',
  description:
    'Use this when a driver has no data sheet: it takes impedance sweeps (numbers, CSV text, or the voltages of a multimeter across driver and resistor) in free air and with an added mass or on a known closed box, and gives parameters that fit every other calculation, each with its 95 % interval, what the uncertainty does to a box, what to measure next, and which drivers make a pair. Without a sweep it tells how to measure: frequencies, resistor, level, mass. For the finished box use as-built.',
  body: DriverMeasurementRequest,
  sections: driverMeasurementSections,
  example: barePaperCone,
  get: false,
  compute: remembered((body, { heavyWork, waiting }: Aside) =>
    areHeavySweeps(body) ? heavyWork.driverMeasurement(body, waiting()) : measured(body),
  ),
  mainTable: 'measured.figures',
  answer: driverMeasurementAnswer,
})
