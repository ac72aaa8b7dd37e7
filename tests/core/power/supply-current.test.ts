import { expect, test } from 'vitest'
import {
  averageCurrentA,
  averagePowerW,
  CREST_DB,
  type Draw,
  EIGHTH_POWER_CREST_DB,
  peakSupplyCurrentA,
} from '../../../src/core/power/supply-current.ts'
import { holdRows } from './hold-rows.ts'

const programme = (inputs: Draw & { crestDb: number }) => ({
  averageCurrentA: averageCurrentA(inputs, inputs.crestDb),
})

holdRows('supply-current', {
  'programme-': programme,
  'crest-of-eighth': () => ({ crestDb: EIGHTH_POWER_CREST_DB }),
  'peak-supply-current': (inputs: Draw) => ({
    averageSineCurrentA: averageCurrentA(inputs, CREST_DB.sine),
    peakSupplyCurrentA: peakSupplyCurrentA(inputs),
  }),
})

test('music at full volume on a 5 V board of 2 x 3 W draws about 0.2 A, as makers read (common practice)', () => {
  const board = {
    channels: 2,
    cleanPowerW: 3.125,
    supplyVoltageV: 5,
    efficiency: 0.85,
    quiescentCurrentMa: 20,
  }
  expect(averageCurrentA(board, EIGHTH_POWER_CREST_DB)).toBeGreaterThan(0.15)
  expect(averageCurrentA(board, EIGHTH_POWER_CREST_DB)).toBeLessThan(0.25)
})

test('an eighth of the power is an eighth of the power', () => {
  expect(averagePowerW(8, EIGHTH_POWER_CREST_DB)).toBeCloseTo(1, 12)
  expect(averagePowerW(8, CREST_DB.sine)).toBeCloseTo(8, 12)
})
