import { designCheck as computeDesignCheck } from '../../core/design/design-check.ts'
import { Design } from '../../schema/design.ts'
import { designCheckSections } from '../../schema/design-check.ts'
import { calculation } from '../calculation.ts'
import { designCheckAnswer } from './answer.ts'
import { shelfPair } from './example.ts'

export const designCheck = calculation({
  path: '/v1/design-check',
  operationId: 'designCheck',
  summary: 'Will this build work?',
  description:
    'Use this when somebody has a whole build in mind, drivers, box, amplifier, supply and boards, and asks whether it will work before the first cut. It gives every section of the other calculations, one verdict, what to buy and what a meter should show at each test. For one question alone use box-tuning, port, load-impedance, power-budget or cut-list.',
  body: Design,
  sections: designCheckSections,
  example: shelfPair,
  get: false,
  compute: computeDesignCheck,
  mainTable: 'materials',
  answer: designCheckAnswer,
})
