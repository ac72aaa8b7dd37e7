import type { DriverMeasurementRequest } from '../../schema/driver-measurement.ts'

/** An invented three-inch driver, simulated with 0.5 % of noise: fs 124 Hz, Qms 3.2, Qes 0.55, Vas 0.92 L, Re 3.4 ohm. */
export const barePaperCone: DriverMeasurementRequest = {
  drivers: [
    {
      id: 'left',
      freeAir: {
        frequencyHz: [
          40, 44.1, 48.6, 53.6, 59.1, 65.1, 71.8, 79.2, 87.3, 96.2, 106, 117, 129, 142, 157, 173, 190, 210,
          232, 255, 281, 310, 342, 377, 416, 458, 505, 557, 614, 677, 746, 823, 907, 1000,
        ],
        impedanceOhm: [
          4.27, 4.46, 4.7, 5.08, 5.55, 6.16, 6.9, 8.11, 9.86, 12.4, 16.5, 21.8, 22.4, 17.5, 13, 10.1, 8.34,
          7.08, 6.14, 5.51, 5.07, 4.7, 4.41, 4.27, 4.05, 3.89, 3.78, 3.74, 3.66, 3.59, 3.54, 3.49, 3.48, 3.47,
        ],
      },
      withMass: {
        massG: 2,
        tolerancePercent: 1,
        sweep: {
          frequencyHz: [
            30, 33, 36.3, 40, 44, 48.5, 53.3, 58.7, 64.6, 71.1, 78.3, 86.2, 94.9, 104, 115, 127, 139, 153,
            169, 186, 204, 225, 248, 273, 300,
          ],
          impedanceOhm: [
            3.89, 4.07, 4.24, 4.48, 4.78, 5.22, 5.84, 6.88, 8.48, 11.3, 16.3, 23, 18.7, 12.6, 9.21, 7.24,
            6.13, 5.33, 4.88, 4.56, 4.26, 4.08, 3.93, 3.79, 3.74,
          ],
        },
      },
      meterOhm: 3.4,
      leadOhm: 0,
      dimensions: { surroundDiameterMm: 59.7, coilDiameterMm: 16, coilHeightMm: 7.4, gapHeightMm: 3 },
    },
  ],
  boxVolumeL: 1.2,
}
