import type { AsBuiltRequest } from '../../schema/as-built.ts'

/** The worked example of the contract: a vented pair that leaks; readings from the circuit simulator, rounded. */
export const leakyPair: AsBuiltRequest = {
  design: {
    name: 'shelf pair for the repair café',
    boxes: 2,
    drivers: [
      {
        id: 'main',
        count: 2,
        parameters: { fsHz: 124, qms: 3.2, qes: 0.55, vasL: 0.92, sdCm2: 28, reOhm: 3.4, leMh: 0.06 },
      },
    ],
    wiring: { series: ['main', 'main'] },
    box: { kind: 'vented', netVolumeL: 2.5, lining: 'walls', leakageQ: 10 },
    port: { innerDiameterMm: 26, tuningHz: 105 },
    amplifier: { channels: 2 },
    supply: { kind: 'adapter', voltageV: 12, currentLimitA: 2 },
  },
  measured: {
    box: 'left',
    sweep: {
      frequencyHz: [
        30, 32.6, 35.4, 38.5, 41.8, 45.4, 49.3, 53.6, 58.2, 63.3, 68.7, 74.7, 81.1, 88.1, 95.7, 104, 113,
        122.8, 133.4, 144.9, 157.4, 171, 185.8, 201.9, 219.3, 238.3, 258.9, 281.3, 305.6, 332, 360.7, 391.8,
        425.7, 462.5, 502.5, 545.9, 593.1, 644.3, 700,
      ],
      impedanceOhm: [
        8.02, 8.23, 8.54, 9.02, 9.66, 10.5, 11.79, 13.62, 16.61, 20.81, 23.27, 19.28, 14.63, 11.87, 10.63,
        10.29, 10.85, 11.97, 14.29, 17.9, 23.63, 30.4, 30.93, 25.11, 19.61, 15.82, 13.48, 11.82, 10.63, 9.81,
        9.19, 8.68, 8.41, 8.03, 7.87, 7.63, 7.48, 7.39, 7.25,
      ],
      phaseDeg: [
        25.4, 27.8, 29.6, 32.5, 35.2, 37.3, 39.6, 40.9, 38.9, 29.3, 10, -8.1, -12.8, -9, -1.2, 8.2, 16.7,
        23.7, 28.5, 29.3, 24, 8.1, -16.3, -33.6, -41.7, -43.3, -42.9, -40.5, -38.6, -35.5, -32.7, -30.2,
        -27.3, -24.9, -22.7, -20.2, -18.2, -16.1, -14.2,
      ],
    },
  },
}
