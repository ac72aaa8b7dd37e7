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

it('a lead of more than an ohm that makes up half of a reading is refused: what is left would be told as a fault', () => {
  const { design, measured } = leakyPair
  const faults = (leadOhm: number) => {
    const result = asBuilt({ design, measured: { ...measured, leadOhm } })
    return 'faults' in result ? result.faults.map(({ at }) => at) : []
  }
  for (const leadOhm of [3.7, 5, 6.5, 6.95, 7.2]) expect(faults(leadOhm)).toEqual(['/measured/leadOhm'])
  for (const leadOhm of [0, 1, 2, 3.6]) expect(faults(leadOhm)).toEqual([])
})
