import { AsBuiltRequest, asBuiltSections } from '../../schema/as-built.ts'
import { asBuiltPicture } from '../../views/chart/measured-impedance.ts'
import { calculation } from '../calculation.ts'
import type { Aside } from '../heavy-work.ts'
import { remembered } from '../recent-answers.ts'
import { asBuiltAnswer } from './answer.ts'
import { leakyPair } from './example.ts'

export const asBuiltBox = calculation({
  views: { svg: { impedance: ({ answer }) => asBuiltPicture(answer) } },
  path: '/v1/as-built',
  operationId: 'asBuilt',
  summary: 'What a finished box really is, against its plan',
  description:
    'Use this when a box is built and its impedance was measured at the terminals: its real tuning or resonance, volume, leak and absorption with their uncertainty, each beside the plan, and what most likely causes the differences: a leak, a port too long or short, missing volume, too much lining, a driver backwards, open or shorted, resistance in leads, a blocked port. To find the data of a bare driver use driver-measurement; to check a plan before it is built use design-check.',
  body: AsBuiltRequest,
  sections: asBuiltSections,
  example: leakyPair,
  get: false,
  // One wild reading among forty makes a fit that takes half a second.
  compute: remembered((body, { heavyWork, waiting }: Aside) => heavyWork.asBuilt(body, waiting())),
  mainTable: 'comparison',
  answer: (sections, _, findings) => asBuiltAnswer(sections, findings),
})
