import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  E12,
  E24,
  nearestPreferred,
  nextNotAbove,
  nextNotBelow,
  R10,
} from '../../../src/core/power/preferred-values.ts'

/** The whole series from a picofarad to a gigaohm, as its numbers are written, rising. */
const written = (series: readonly number[]): number[] =>
  Array.from({ length: 22 }, (_, i) => i - 12).flatMap((power) =>
    series.map((value) => Number(`${value}e${power}`)),
  )

/** Any number of 19 decades, and those at and a hair beside a value of a series, where a decade could be missed. */
const exactly = (values: readonly number[]) =>
  fc.oneof(
    fc.double({ min: -10, max: 9, noNaN: true }).map((digits) => 10 ** digits),
    fc
      .tuple(
        fc.constantFrom(...values.filter((value) => value > 1e-10 && value < 1e9)),
        fc.constantFrom(1, 1 - 2 ** -53, 1 + 2 ** -52, 1 - 1e-12, 1 + 1e-12, 1 - 1e-6, 1 + 1e-6),
      )
      .map(([value, factor]) => value * factor),
  )

describe.each([
  ['E12', E12],
  ['E24', E24],
  ['R10', R10],
] as const)('%s', (_, series) => {
  const values = written(series)
  const least = (exact: number) => values.filter((value) => value >= exact * (1 - 1e-9)).at(0)
  const most = (exact: number) => values.filter((value) => value <= exact * (1 + 1e-9)).at(-1)
  const away = (exact: number) => Math.min(...values.map((value) => Math.abs(value - exact)))

  it('has the next value below, above and nearest of all the values there are', () => {
    fc.assert(
      fc.property(exactly(values), (exact) => {
        expect(nextNotBelow(exact, series)).toBe(least(exact))
        expect(nextNotAbove(exact, series)).toBe(most(exact))
        expect(Math.abs(nearestPreferred(exact, series) - exact)).toBe(away(exact))
      }),
      { seed: 20_260_210, numRuns: 1000 },
    )
  })
})
