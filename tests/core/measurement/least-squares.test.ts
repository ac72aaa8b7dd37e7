import { describe, expect, it } from 'vitest'
import { leastSquares, robustLeastSquares } from '../../../src/core/measurement/least-squares.ts'
import { randomFrom } from '../../../src/core/shop/layout/random.ts'
import { normal } from '../../outside/normal.ts'

const SEED = 20_261_125

const WIDE = { lowest: [-100, -100], highest: [100, 100] }

describe('a straight line, against the closed formulas of linear regression (textbook)', () => {
  const x = Array.from({ length: 20 }, (_, i) => i / 10)
  const random = randomFrom(SEED)
  const y = Float64Array.from(x, (value) => 1 + 2 * value + 0.1 * normal(random))
  const model = (values: readonly number[]) => Float64Array.from(x, (at) => values[0]! + values[1]! * at)
  const mean = (list: ArrayLike<number>) => Array.from(list).reduce((a, b) => a + b, 0) / list.length
  const sxx = x.reduce((sum, at) => sum + (at - mean(x)) ** 2, 0)
  const slope = x.reduce((sum, at, i) => sum + (at - mean(x)) * (y[i]! - mean(y)), 0) / sxx
  const offset = mean(y) - slope * mean(x)
  const variance = x.reduce((sum, at, i) => sum + (y[i]! - offset - slope * at) ** 2, 0) / (x.length - 2)

  it('has the same values and the same covariance', () => {
    const fit = leastSquares({ model, readings: y, start: [0, 0], ...WIDE })
    expect(fit.values[0]).toBeCloseTo(offset, 8)
    expect(fit.values[1]).toBeCloseTo(slope, 8)
    expect(fit.misfit).toBeCloseTo(Math.sqrt(variance), 8)
    expect(fit.covariance[1]?.[1]).toBeCloseTo(variance / sxx, 8)
    expect(fit.covariance[0]?.[1]).toBeCloseTo((-mean(x) * variance) / sxx, 8)
    expect(fit.converged).toBe(true)
  })

  it('is not drawn aside by two readings that are far off, when it is to be robust', () => {
    const spoiled = y.map((value, i) => (i === 3 || i === 12 ? value + 5 : value))
    const plain = leastSquares({ model, readings: spoiled, start: [0, 0], ...WIDE })
    const robust = robustLeastSquares({ model, readings: spoiled, start: [0, 0], ...WIDE })
    expect(Math.abs(plain.values[0]! - offset)).toBeGreaterThan(0.3)
    expect(robust.values[0]).toBeCloseTo(offset, 1)
    expect([...robust.weights].flatMap((weight, i) => (weight === 0 ? [i] : []))).toEqual([3, 12])
  })
})

describe('a curve', () => {
  // H. H. Rosenbrock, Computer J. 3 (1960): the valley whose least value, 0, lies at (1, 1); from memory.
  it('in a bent valley is followed to its end', () => {
    const model = ([a = 0, b = 0]: readonly number[]) => Float64Array.of(10 * (b - a * a), 1 - a)
    const fit = leastSquares({ model, readings: Float64Array.of(0, 0), start: [-1.2, 1], ...WIDE })
    expect(fit.values[0]).toBeCloseTo(1, 6)
    expect(fit.values[1]).toBeCloseTo(1, 6)
  })

  it('stays within its bounds', () => {
    const model = ([a = 0]: readonly number[]) => Float64Array.of(a, a)
    const fit = leastSquares({
      model,
      readings: Float64Array.of(5, 5),
      start: [0],
      lowest: [-1],
      highest: [2],
    })
    expect(fit.values).toEqual([2])
  })

  it('whose values pull at one another, one of them at its bound, settles the other at once', () => {
    // A line far from its origin: offset and slope are nearly one value. With the slope held at 1, the least squares
    // give the offset as the mean of y - x.
    const x = [10, 10.5, 11, 11.5, 12]
    const y = [31, 31.8, 33.1, 33.9, 35.2]
    const model = ([a = 0, b = 0]: readonly number[]) => Float64Array.from(x, (at) => a + b * at)
    const fit = leastSquares({
      model,
      readings: Float64Array.from(y),
      start: [0, 0.5],
      lowest: [-100, 0],
      highest: [100, 1],
      mostSteps: 10,
    })
    expect(fit.converged).toBe(true)
    expect(fit.values[1]).toBe(1)
    expect(fit.values[0]).toBeCloseTo(22, 6)
  })

  it('with a value that no reading depends on keeps that value, and says so by a huge variance', () => {
    const model = ([a = 0]: readonly number[]) => Float64Array.of(a, a, a)
    const readings = Float64Array.of(1, 2, 3)
    const fit = leastSquares({ model, readings, start: [0, 0.5], ...WIDE })
    expect(fit.values[0]).toBeCloseTo(2, 8)
    expect(fit.values[1]).toBe(0.5)
    expect(fit.covariance[1]?.[1]).toBeGreaterThan(1e6)
  })

  it(`has 95 % intervals that hold the truth in 93 to 97 % of 500 runs, seed ${SEED}`, () => {
    const random = randomFrom(SEED)
    const x = Array.from({ length: 40 }, (_, i) => i / 10)
    const curve = ([a = 0, b = 0]: readonly number[]) => Float64Array.from(x, (at) => a * Math.exp(-b * at))
    let held = 0
    for (let run = 0; run < 500; run++) {
      const readings = curve([2, 0.7]).map((value) => value + 0.05 * normal(random))
      const fit = robustLeastSquares({ model: curve, readings, start: [1, 1], ...WIDE })
      // Student's 97.5 % point for 38 degrees of freedom, from tables: 2.024.
      if (Math.abs(fit.values[1]! - 0.7) < 2.024 * Math.sqrt(fit.covariance[1]![1]!)) held++
    }
    expect(held / 500).toBeGreaterThan(0.93)
    expect(held / 500).toBeLessThan(0.97)
  })
})
