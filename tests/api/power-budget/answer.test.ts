import { expect, test } from 'vitest'
import { powerBudgetAnswer } from '../../../src/api/power-budget/answer.ts'
import { isRefusal } from '../../../src/core/outcome.ts'
import { powerBudget } from '../../../src/core/power/power-budget.ts'
import type { PowerBudgetRequest } from '../../../src/schema/power-budget.ts'

function answerOf(request: PowerBudgetRequest): string {
  const outcome = powerBudget(request)
  if (isRefusal(outcome)) throw new Error('refused')
  return powerBudgetAnswer(outcome.sections)
}

const board: PowerBudgetRequest = {
  amplifier: { supplyVoltageV: 12, gainDb: 20, outputResistanceOhm: 0 },
  loadOhm: 8,
  supply: { kind: 'adapter', voltageV: 12 },
}

test('a pack of three loses 2.9 dB of level (check row pack-3s-power-span), an adapter none', () => {
  expect(answerOf({ ...board, supply: { kind: 'cells', cellsInSeries: 3 } })).toContain('loses 2.9 dB')
  expect(answerOf(board)).not.toContain('pack')
})

test('what ends the loudness is said: 12 V clip at 8.5 V, ten times the source', () => {
  expect(answerOf({ ...board, signal: { sourceLevelV: 0.5 } })).toContain('level of the audio source ends')
  expect(answerOf({ ...board, signal: { sourceLevelV: 1 } })).not.toContain('ends the loudness')
  expect(answerOf({ ...board, supply: { ...board.supply, currentLimitA: 0.05 } })).toContain(
    'current of the source ends',
  )
})

test('a 5 V board claimed at 3 W a channel is said to draw about 0.2 A with loud music (common practice)', () => {
  const small: PowerBudgetRequest = {
    amplifier: { supplyVoltageV: 5, ratedPowerW: 3, outputResistanceOhm: 0 },
    loadOhm: 4,
    supply: { kind: 'computer-port' },
  }
  expect(answerOf(small)).toContain('0.204 A by the rule of an eighth of the power')
})
