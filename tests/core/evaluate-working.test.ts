import { describe, expect, it } from 'vitest'
import { evaluateWorking } from '../../src/core/evaluate-working.ts'

const row = (formula: string, values: Record<string, number>) => ({
  quantity: 'q',
  formula,
  with: values,
  unit: 'Hz',
  source: 'by hand',
})

describe('printed formulas', () => {
  // Worked by hand.
  it.each([
    ['a + b * c - d / 2', { a: 1, b: 2, c: 3, d: 4 }, 5],
    ['-x^2', { x: 3 }, -9],
    ['sqrt(a) * cbrt(b)', { a: 16, b: 27 }, 12],
    ['20 * log10(r)', { r: 100 }, 40],
    ['2 * pi * f', { f: 0.5 }, Math.PI],
    ['log(exp(x))', { x: 1.5 }, 1.5],
    ['min(a, b) + max(a, b) + abs(-1)', { a: 2, b: 5 }, 8],
    ['sin(x)^2 + cos(x)^2 + atan(tan(x))', { x: 0.3 }, 1.3],
  ])('%s', async (formula, values, expected) => {
    const [step] = await evaluateWorking([row(formula, values)])
    expect(step?.result).toBeCloseTo(expected, 12)
    expect(step?.with).toEqual(values)
  })

  it.each(['1 / 0', 'sqrt(-1)', '"text"'])('%s is a mistake of ours', async (formula) => {
    await expect(evaluateWorking([row(formula, {})])).rejects.toThrow('does not come out as a number')
  })
})
