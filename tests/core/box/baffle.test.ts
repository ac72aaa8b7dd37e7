import { expect, it } from 'vitest'
import { baffleGainDb } from '../../../src/core/box/baffle.ts'
import { checks, expectWithin } from '../../outside/checks.ts'

// First-order edge model evaluated outside; cf. J. Vanderkooy 1991 (from memory).
it.each(checks('acoustics-checks.json', 'baffle-step').filter((check) => check.id === 'baffle-rect'))(
  '$id',
  (check) => {
    const { baffleWidthMm, baffleHeightMm, sourceXMm, sourceYMm, frequencyHz, speedOfSoundMPerS } =
      check.inputs
    const gain = baffleGainDb(
      { widthMm: baffleWidthMm, heightMm: baffleHeightMm, sourceXMm, sourceYMm },
      Float64Array.from(frequencyHz),
      speedOfSoundMPerS,
    )
    expectWithin(check, 'gainOverFullSpaceDb', Array.from(gain))
  },
)

it('the step begins at full space', () => {
  const gain = baffleGainDb(
    { widthMm: 120, heightMm: 240, sourceXMm: 0, sourceYMm: 40 },
    Float64Array.of(5),
    344,
  )
  expect(Math.abs(gain[0]!)).toBeLessThan(0.01)
})
