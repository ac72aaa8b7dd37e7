import { expect, it } from 'vitest'
import { leakyPair } from '../../../src/api/as-built/example.ts'
import { asBuilt } from '../../../src/core/as-built/as-built.ts'
import { asBuiltPicture } from '../../../src/views/chart/measured-impedance.ts'

function pictureWith(change: (ohm: number, i: number) => number): string {
  const { design, measured } = structuredClone(leakyPair)
  const { sweep } = measured
  if (!('impedanceOhm' in sweep)) throw new Error('the example is a list of impedances')
  const result = asBuilt({
    design,
    measured: { ...measured, sweep: { ...sweep, impedanceOhm: (sweep.impedanceOhm ?? []).map(change) } },
  })
  if ('faults' in result) throw new Error(JSON.stringify(result.faults))
  return asBuiltPicture(result.sections)
}

it('a reading without a load does not press the picture flat', () => {
  const spoiled = pictureWith((ohm, i) => (i === 10 ? 1e5 : ohm))
  expect(spoiled).toContain('Far above, and not drawn: 1 of the readings.')
  expect(spoiled).not.toMatch(/>\s*(100,?000|100k)\s*</)
  expect(pictureWith((ohm) => ohm)).not.toContain('Far above')
})

it('the plan and what was found keep their points where a reading is not drawn', () => {
  const coordinates = (picture: string) =>
    [...picture.matchAll(/<path[^>]* d="(M[^"]*)"/g)].map(([, path = '']) => path.split(/[ML]/).length - 1)
  const points = leakyPair.measured.sweep as { frequencyHz: readonly number[] }
  const spoiled = pictureWith((ohm, i) => (i === 10 ? 1e5 : ohm))
  const whole = points.frequencyHz.length
  expect(
    coordinates(spoiled)
      .filter((count) => count > 2)
      .sort(),
  ).toEqual([whole - 1, whole, whole])
})
