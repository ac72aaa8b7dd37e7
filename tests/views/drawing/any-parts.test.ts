import fc from 'fast-check'
import { expect, it } from 'vitest'
import { boxSvg, cuttingSvg, panelsDxf, panelsSvg } from '../../../src/views/drawing/cut-list-drawings.ts'
import { drawable } from './answers.ts'
import { readSvg } from './read-svg.ts'

const SEED = 20_261_126
const length = (max: number) => fc.double({ min: 0.5, max, noNaN: true })
const grain = fc.constantFrom('any' as const, 'length' as const, 'width' as const)
const name = fc.string({ minLength: 1, maxLength: 60, unit: 'binary' })

const request = fc.record({
  name,
  parts: fc.array(
    fc.record({
      id: name,
      lengthMm: length(1500),
      widthMm: length(800),
      grain,
      count: fc.integer({ min: 1, max: 4 }),
    }),
    { minLength: 1, maxLength: 12 },
  ),
  stock: fc.array(
    fc.record({
      id: name,
      lengthMm: length(2500).map((mm) => mm + 20),
      widthMm: length(1300).map((mm) => mm + 20),
      trimMm: fc.double({ min: 0, max: 9, noNaN: true }),
      grain: fc.constantFrom('none' as const, 'length' as const, 'width' as const),
      count: fc.integer({ min: 1, max: 3 }),
    }),
    { minLength: 1, maxLength: 3 },
  ),
  workshop: fc.record({ kerfMm: fc.double({ min: 0, max: 20, noNaN: true }) }),
})

it('draws whatever parts, boards and names it is given: well formed, numbers alone', () => {
  fc.assert(
    fc.property(request, (asked) => {
      const { answer } = drawable(asked)
      const pictures = [cuttingSvg(answer, asked), panelsSvg(answer, asked), boxSvg(answer, asked)]
      for (const svg of pictures.filter((picture) => picture !== null)) {
        readSvg(svg)
        expect(svg).not.toMatch(/="[^"]*(NaN|Infinity|undefined)/)
      }
      expect(pictures[1]).not.toBeNull()
      expect(panelsDxf(answer)).not.toMatch(/^(NaN|-?Infinity|undefined)$/m)
    }),
    { seed: SEED, numRuns: 60 },
  )
})
