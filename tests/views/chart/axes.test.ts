import { describe, expect, it } from 'vitest'
import { axisAround } from '../../../src/views/chart/linear-axis.ts'
import { logAxis, positiveDomain, roundDomain } from '../../../src/views/chart/log-axis.ts'

const texts = (axis: { ticks: readonly { text: string }[] }) => axis.ticks.map(({ text }) => text)

describe('frequencies', () => {
  const over = (from: number, to: number) =>
    logAxis({ domain: [from, to], mostTicks: 20, prefixFrom: 1000 })([0, 300])

  // The preferred numbers 1, 2 and 5 of a decade, as printed on the paper of every measuring set.
  it.each([
    [20, 20_000, ['20', '50', '100', '200', '500', '1 k', '2 k', '5 k', '10 k', '20 k']],
    [10, 40_000, ['10', '20', '50', '100', '200', '500', '1 k', '2 k', '5 k', '10 k', '20 k']],
    [30, 300, ['50', '100', '200']],
    [100, 130, ['100', '105', '110', '115', '120', '125', '130']],
    [
      1e-6,
      1e9,
      Array.from(
        { length: 16 },
        (_, index) =>
          [
            '1e-6',
            '1e-5',
            '0.0001',
            '0.001',
            '0.01',
            '0.1',
            '1',
            '10',
            '100',
            '1 k',
            '10 k',
            '100 k',
            '1 M',
            '10 M',
            '100 M',
            '1 G',
          ][index],
      ),
    ],
  ])('%d to %d Hz', (from, to, expected) => {
    expect(texts(over(from, to))).toEqual(expected)
  })

  it('lie by their logarithm: equal ratios are equal ways', () => {
    const axis = over(20, 20_000)
    for (const [hz, at] of [
      [20, 0],
      [200, 100],
      [2000, 200],
      [20_000, 300],
    ] as const)
      expect(axis.at(hz)).toBeCloseTo(at, 9)
    expect(axis.at(50)).toBeCloseTo(100 * Math.log10(2.5), 9)
  })

  it('fine lines stand at the whole numbers between', () => {
    expect(over(20, 200).fine).toEqual([30, 40, 60, 70, 80, 90])
  })
})

describe('values', () => {
  it.each([
    [
      [0, 4.3],
      ['0', '1', '2', '3', '4', '5'],
    ],
    [
      [-45, 45],
      ['\u221260', '\u221240', '\u221220', '0', '20', '40', '60'],
    ],
    [
      [0, 0.3],
      ['0', '0.05', '0.1', '0.15', '0.2', '0.25', '0.3'],
    ],
    [
      [0, 60_000],
      ['0', '10 k', '20 k', '30 k', '40 k', '50 k', '60 k'],
    ],
    [
      [0, 0],
      ['0', '0.2', '0.4', '0.6', '0.8', '1'],
    ],
    [[], ['0', '0.2', '0.4', '0.6', '0.8', '1']],
    [
      [null, Number.NaN, Number.POSITIVE_INFINITY],
      ['0', '0.2', '0.4', '0.6', '0.8', '1'],
    ],
  ])('%j', (values, expected) => {
    expect(texts(axisAround(values)([100, 0]))).toEqual(expected)
  })

  it('a single value lies inside, not on the frame', () => {
    for (const value of [83, -4, 1e-9, 1e9]) {
      const at = axisAround([value])([100, 0]).at(value)
      expect(at).toBeGreaterThan(10)
      expect(at).toBeLessThan(90)
    }
  })

  it('a logarithmic one ends on 1, 2 or 5', () => {
    expect(roundDomain([3.2, 61])).toEqual([2, 100])
    expect(roundDomain([5, 50])).toEqual([5, 50])
    expect(roundDomain([0.003, 0.0034])).toEqual([0.002, 0.005])
  })

  it('and takes positive values alone, an octave about a single one', () => {
    expect(positiveDomain([0, -3, null, 8], [1, 2])).toEqual([4, 16])
    expect(positiveDomain([0, null], [1, 2])).toEqual([1, 2])
    expect(positiveDomain([7, 3, 30], [1, 2])).toEqual([3, 30])
  })
})
