import { expect, test } from 'vitest'
import { resistorRatingW } from '../../../src/core/power/resistor-rating.ts'

// A resistor loaded to half its rating, in the ratings of a parts drawer: common practice, no source.
test.each([
  [0.01, 0.25],
  [0.125, 0.25],
  [0.126, 0.5],
  [0.6, 2],
  [200, 400],
])('%d W of heat want a resistor of %d W', (heatW, ratingW) => {
  expect(resistorRatingW(heatW)).toBe(ratingW)
})
