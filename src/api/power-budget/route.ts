import { powerBudget as computePowerBudget } from '../../core/power/power-budget.ts'
import { PowerBudgetRequest, powerBudgetSections } from '../../schema/power-budget.ts'
import { powerFlowPicture } from '../../views/chart/power-flow.ts'
import { calculation } from '../calculation.ts'
import { powerBudgetAnswer } from './answer.ts'

export const powerBudget = calculation({
  views: {
    svg: { 'power-flow': ({ answer, body }) => powerFlowPicture(answer, body) },
  },
  path: '/v1/power-budget',
  operationId: 'powerBudget',
  summary: 'What amplifier and supply can give together',
  description:
    'Use this when an amplifier board, its load and what feeds it are known and clean power, supply current, voltage at the board, running time, reservoir, indicator, volume control or gain are asked. It takes the load as one figure: for a wiring of drivers use load-impedance first; for a whole build use design-check.',
  body: PowerBudgetRequest,
  sections: powerBudgetSections,
  example: {
    amplifier: {
      channels: 2,
      output: 'bridge',
      supplyVoltageV: 12,
      minimumLoadOhm: 4,
      gainDb: 26,
      inputResistanceKohm: 20,
      quiescentCurrentMa: 25,
      efficiency: 0.88,
    },
    loadOhm: 8,
    supply: {
      kind: 'adapter',
      voltageV: 12,
      currentLimitA: 2,
      cable: { lengthM: 1.2, gaugeAwg: 22 },
      reservoirUf: 1000,
      indicator: { colour: 'green', currentMa: 3 },
    },
    signal: {
      sourceLevelV: 0.5,
      volumeControl: { resistanceKohm: 50, taper: 'audio' },
      inputCapacitorUf: 0.47,
    },
    programme: 'music',
  },
  get: true,
  compute: (request) => computePowerBudget(request),
  mainTable: 'values',
  answer: powerBudgetAnswer,
})
