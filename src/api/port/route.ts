import { port as computePort } from '../../core/box/port.ts'
import { PortRequest, portSections } from '../../schema/port-calculation.ts'
import { calculation } from '../calculation.ts'
import { portAnswer } from './answer.ts'

export const port = calculation({
  path: '/v1/port',
  operationId: 'port',
  summary: 'Length or tuning of a port',
  description:
    'Use this when the free air volume of a box and a tube or slot are known and either the length for a wanted tuning or the tuning of a given length is asked. It compares other tubes on hand too. It knows no driver: for response, excursion and air speed use box-tuning; for a whole build use design-check.',
  body: PortRequest,
  sections: portSections,
  example: { netVolumeL: 3, innerDiameterMm: 26, tuningHz: 105 },
  get: true,
  compute: computePort,
  mainTable: 'values',
  answer: portAnswer,
})
