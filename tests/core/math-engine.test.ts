import { expect, test } from 'vitest'
import { mathEngine } from '../../src/core/math-engine.ts'

test.each([
  // Arithmetic done by hand: 7.2/2 = 3.6, so four boards.
  ['ceil(parts / board)', { parts: 7.2, board: 2 }, 4],
  ['1 / (1/R1 + 1/R2)', { R1: 8, R2: 8 }, 4],
])('%s of our printed formulas comes out', async (formula, values, expected) => {
  const { evaluate } = await mathEngine()
  expect(evaluate(formula, values)).toBeCloseTo(expected, 12)
})
