import { expect, it } from 'vitest'
import { leakyPair } from '../../../src/api/as-built/example.ts'
import { asBuilt } from '../../../src/core/as-built/as-built.ts'

it('a lead with more resistance than any reading is refused: it is part of every reading', () => {
  const { design, measured } = leakyPair
  // The lowest of the readings is 7.25 ohm.
  expect(asBuilt({ design, measured: { ...measured, leadOhm: 9 } })).toEqual({
    faults: [
      {
        at: '/measured/leadOhm',
        message: expect.stringContaining('the lowest reading of the sweep is 7.25 ohm'),
      },
    ],
  })
  expect(asBuilt({ design, measured: { ...measured, leadOhm: 0.2 } })).not.toHaveProperty('faults')
})
