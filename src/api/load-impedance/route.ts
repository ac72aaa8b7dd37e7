import { loadInBox } from '../../core/design/load-in-box.ts'
import { LoadImpedanceRequest, loadImpedanceSections } from '../../schema/load-impedance.ts'
import { loadImpedancePicture } from '../../views/chart/impedance.ts'
import { loadWiringSvg } from '../../views/wiring/load-circuit.ts'
import { calculation } from '../calculation.ts'
import { loadImpedanceAnswer } from './answer.ts'

export const loadImpedance = calculation({
  views: {
    svg: {
      impedance: ({ answer }) => loadImpedancePicture(answer),
      wiring: ({ answer, body }) => loadWiringSvg(answer, body),
    },
  },
  path: '/v1/load-impedance',
  operationId: 'loadImpedance',
  summary: 'What the amplifier sees of a wiring of drivers',
  description:
    'Use this when drivers are to be wired in series, in parallel or with a crossover and it is asked what a meter should read, how low the impedance goes, what each driver gets, whether the amplifier may drive it, or which other wiring would do. For power and supply use power-budget; for a whole build use design-check.',
  body: LoadImpedanceRequest,
  sections: loadImpedanceSections,
  example: {
    drivers: [
      {
        id: 'main',
        count: 2,
        parameters: { fsHz: 124, qms: 3.2, qes: 0.55, reOhm: 3.4, leMh: 0.06, ratedImpedanceOhm: 4 },
      },
    ],
    wiring: { series: ['main', 'main'] },
    amplifier: { channels: 1, minimumLoadOhm: 4 },
  },
  get: true,
  compute: loadInBox,
  mainTable: 'shares',
  answer: (sections, _, findings) => loadImpedanceAnswer(sections, findings),
})
