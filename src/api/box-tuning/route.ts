import { boxTuning as computeBoxTuning } from '../../core/box/box-tuning.ts'
import { BoxTuningRequest } from '../../schema/box-tuning.ts'
import { boxTuningSections } from '../../schema/box-tuning-sections.ts'
import { airSpeedPicture } from '../../views/chart/air-speed.ts'
import { excursionPicture } from '../../views/chart/excursion.ts'
import { groupDelayPicture } from '../../views/chart/group-delay.ts'
import { channelImpedancePicture } from '../../views/chart/impedance.ts'
import { responsePicture } from '../../views/chart/response.ts'
import { calculation } from '../calculation.ts'
import type { Aside } from '../heavy-work.ts'
import { remembered } from '../recent-answers.ts'
import { boxTuningAnswer } from './answer.ts'

export const boxTuning = calculation({
  views: {
    svg: {
      response: ({ answer }) => responsePicture(answer),
      impedance: ({ answer }) => channelImpedancePicture(answer),
      excursion: ({ answer }) => excursionPicture(answer),
      'air-speed': ({ answer }) => airSpeedPicture(answer),
      'group-delay': ({ answer }) => groupDelayPicture(answer),
    },
  },
  path: '/v1/box-tuning',
  operationId: 'boxTuning',
  summary: 'How a driver behaves in a box',
  description:
    'Use this when the driver data and a closed, vented or passive-radiator box are known and tuning, cut-off, response, impedance, excursion, air speed or loudness are asked. For the length of a tube alone use port; for amplifier, supply and panels as well use design-check.',
  body: BoxTuningRequest,
  sections: boxTuningSections,
  example: {
    driver: {
      fsHz: 124,
      qms: 3.2,
      qes: 0.55,
      vasL: 0.92,
      sdCm2: 28,
      reOhm: 3.4,
      leMh: 0.06,
      xmaxMm: 2.2,
      ratedPowerW: 12,
    },
    driverCount: 2,
    driverWiring: 'series',
    box: { kind: 'vented', netVolumeL: 2.5, lining: 'walls', leakageQ: 10 },
    port: { innerDiameterMm: 26, tuningHz: 105 },
    drive: { voltageV: 8, sourceResistanceOhm: 0.3 },
    curve: { fromHz: 20, toHz: 20_000, points: 100 },
  },
  get: true,
  // The cells of a sheet each ask for one value of the same box.
  compute: remembered((request, _: Aside) => computeBoxTuning(request)),
  mainTable: 'curves',
  answer: boxTuningAnswer,
})
