import { expect, it } from 'vitest'
import { leakyPair } from '../../../src/api/as-built/example.ts'
import { asBuilt } from '../../../src/core/as-built/as-built.ts'

function withReading(place: number | null, ohm: number) {
  const { design, measured } = leakyPair
  const { sweep } = measured
  if (!('impedanceOhm' in sweep)) throw new Error('the example is a list of impedances')
  const impedanceOhm = (sweep.impedanceOhm ?? []).map((value, i) => (i === place ? ohm : value))
  const result = asBuilt({ design, measured: { ...measured, sweep: { ...sweep, impedanceOhm } } })
  if ('faults' in result) throw new Error(JSON.stringify(result.faults))
  return result
}

const clean = withReading(null, 0).sections.secondOpinion

// 45.4 Hz, on the flank below the lower peak, and 500 Hz and 113 Hz, above the upper one and beside the dip.
it.each([
  [5, 250, '45.4 Hz'],
  [34, 150, '503 Hz'],
  [16, 60, '113 Hz'],
])('reading %d of %d ohm is no peak for the published formulas', (place, ohm, hz) => {
  const { sections, findings } = withReading(place, ohm)
  const { secondOpinion } = sections
  expect(Math.abs(secondOpinion!.resonanceHz! / clean!.resonanceHz! - 1)).toBeLessThan(0.03)
  expect(findings.map(({ code }) => code)).not.toContain('as-built-opinions-differ')
  const left = findings.find(({ code }) => code === 'as-built-readings-left-out')
  expect(left?.message).toMatch(/^1 of the 39 readings /)
  expect(left?.message).toContain(hz)
})
