import { describe, expect, it } from 'vitest'
import type { Drawing } from '../../../src/views/drawing/drawing.ts'
import { templatePages } from '../../../src/views/drawing/template-pages.ts'
import { type Drawable, drawable, shelf } from './answers.ts'

const BOX = {
  kind: 'closed' as const,
  outer: { widthMm: 120, heightMm: 200, depthMm: 160 },
  panelThicknessMm: 12,
}
const made = (edging: object | null, box: object = {}): Drawable =>
  drawable({
    box: { ...BOX, ...box },
    stock: [{ lengthMm: 1220, widthMm: 600, thicknessMm: 12 }],
    workshop: edging === null ? {} : { edging: { widthMm: 22, ...edging } },
  })

const pagesOf = ({ answer, request }: Drawable) => templatePages(answer, request, 'A4')
const wordsOn = ({ layers }: Drawing): string =>
  layers
    .flatMap(({ shapes }) => shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : [])))
    .join(' ')

/** The first sheet of the template of a panel. */
const templateOf = (drawn: Drawable, id: string) =>
  pagesOf(drawn).find(({ title }) => title.startsWith(`Template ${id},`))!

describe('a template of a panel whose bands are still to come', () => {
  it('says how thick they are and on which edges, and draws where the wood ends', () => {
    const page = templateOf(made({ thicknessMm: 2, edges: 'all' }), 'back')
    expect(wordsOn(page)).toContain('with bands of 2 mm on all edges')
    expect(page.says).toContain('with bands of 2 mm on all edges')
    const shapes = page.layers.flatMap((layer) => layer.shapes)
    const outline = shapes.find((shape) => shape.kind === 'polygon' && shape.role === 'mark')
    if (outline?.kind !== 'polygon') throw new Error('no outline')
    const corner = outline.points[0]!
    const ends = shapes
      .filter((shape) => shape.kind === 'segments' && shape.role === 'hatch')
      .flatMap((shape) => (shape.kind === 'segments' ? shape.segments : []))
      .map(([a, b]) => [a.xMm - corner.xMm, a.yMm - corner.yMm, b.xMm - corner.xMm, b.yMm - corner.yMm])
    // 120 x 200 mm: 2 mm inside each edge.
    const wanted = [
      [2, 0, 2, 200],
      [118, 0, 118, 200],
      [0, 2, 120, 2],
      [0, 198, 120, 198],
    ]
    expect(ends).toHaveLength(4)
    for (const line of wanted)
      expect(ends.some((end) => end.every((mm, index) => Math.abs(mm - line[index]!) < 1e-9))).toBe(true)
  })

  it('names the edges where they are not all', () => {
    const holes = [{ ...made(null).answer.panels.find(({ id }) => id === 'back')!.holes[0]! }]
    const { answer, request } = made({ thicknessMm: 0.5, edges: 'front' }, { runsThrough: 'sides' })
    const side = { ...answer.panels.find(({ id }) => id === 'side')!, holes }
    const [page] = templatePages({ panels: [side] }, request, 'A4')
    expect(wordsOn(page!)).toContain('with bands of 0.5 mm on bottom')
  })

  it('says so where nobody tells how thick they are', () => {
    expect(wordsOn(templateOf(made({ edges: 'all' }), 'back'))).toMatch(
      /Bands come on all edges; .* not given/,
    )
  })

  it('says nothing without bands', () => {
    expect(wordsOn(templateOf(made(null), 'back'))).not.toContain('band')
  })
})

it('there is a template of what is drilled, none of a mere window', () => {
  const { answer, request } = made(null, { braces: [{ lies: 'level' }] })
  expect(answer.panels.find(({ id }) => id === 'brace')?.holes).toHaveLength(1)
  const titles = pagesOf({ answer, request }).map(({ title }) => title)
  expect(titles).toEqual([expect.stringContaining('Template back')])
  expect(pagesOf(shelf()).map(({ title }) => title)).toEqual([
    expect.stringContaining('Template front'),
    expect.stringContaining('Template back'),
  ])
})
