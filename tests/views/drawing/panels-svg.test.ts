import { describe, expect, it } from 'vitest'
import { boxSvg, panelsSvg } from '../../../src/views/drawing/cut-list-drawings.ts'
import { type Drawable, drawable, fortyParts, shelf, tower } from './answers.ts'
import { all, cornersOf, named, readSvg } from './read-svg.ts'

describe.each<[string, () => Drawable]>([
  ['a shelf pair', shelf],
  ['a tower', tower],
])('the drawing of the front of %s', (_, make) => {
  const { answer, request } = make()
  const front = answer.panels.find(({ id }) => id === 'front')!
  const picture = readSvg(panelsSvg(answer, request, 'front')!)
  const heightMm = Number(picture.attributes['viewBox']!.split(' ')[3])
  const words = named(picture, 'text').map(({ text }) => text)
  const edge = cornersOf(all(picture).find(({ attributes }) => attributes['class'] === 'outline')!, heightMm)
  const left = Math.min(...edge.map(({ x }) => x))
  const bottom = Math.min(...edge.map(({ y }) => y))
  const scale = (Math.max(...edge.map(({ x }) => x)) - left) / front.lengthMm

  it('has every round hole where the answer puts it', () => {
    const circles = named(picture, 'circle')
      .filter(({ attributes }) => attributes['class'] === 'hole')
      .map(({ attributes: { cx, cy, r } }) => [Number(cx), heightMm - Number(cy), Number(r)])
    const wanted = front.holes
      .filter(({ diameterMm }) => diameterMm !== null)
      .map(({ xMm, yMm, diameterMm }) => [
        left + scale * xMm,
        bottom + scale * yMm,
        (scale * diameterMm!) / 2,
      ])
    expect(circles).toHaveLength(wanted.length)
    for (const [index, numbers] of wanted.entries())
      for (const [place, number] of numbers.entries()) expect(circles[index]![place]).toBeCloseTo(number, 2)
  })

  it('dimensions the panel and the centre of every opening, and lists every hole', () => {
    const figure = (value: number) => String(Number(value.toFixed(1)))
    for (const value of [front.lengthMm, front.widthMm]) expect(words).toContain(figure(value))
    for (const { id, xMm, yMm } of front.holes) {
      expect(words).toContain(figure(xMm))
      expect(words).toContain(figure(yMm))
      expect(words).toContain(id)
    }
  })

  it('names the circle of the screws', () => {
    // 71 mm: the frame of the driver in the request.
    expect(words.some((text) => /^4 × ⌀[\d.]+ on ⌀71$/.test(text))).toBe(true)
  })
})

it('says what to saw beside the size with the bands on (contract: saw sizes are less the bands)', () => {
  const { answer, request } = shelf()
  const front = answer.panels.find(({ id }) => id === 'front')!
  // Half a millimetre of band all round a panel of 160 x 320 mm.
  const size = { lengthMm: 160, widthMm: 320, sawLengthMm: 159, sawWidthMm: 319, holes: [] }
  const said = (change: object) =>
    named(
      readSvg(panelsSvg({ ...answer, panels: [{ ...front, ...size, ...change }] }, request, 'front')!),
      'text',
    )
      .map(({ text }) => text)
      .join(' ')
  expect(said({})).toMatch(/160 × 320 × \d+ mm, sawn 159 × 319,/)
  expect(said({})).toContain('sizes and places are those with the band on')
  expect(said({ sawLengthMm: 160, sawWidthMm: 320 })).not.toContain('sawn')
})

it('draws bands on the edges that get one', () => {
  const { answer, request } = shelf()
  const front = answer.panels.find(({ id }) => id === 'front')!
  const bands = all(readSvg(panelsSvg(answer, request, 'front')!)).filter(
    ({ attributes }) => attributes['class'] === 'band',
  )
  expect(front.bandedEdges.length).toBeGreaterThan(0)
  expect(bands).toHaveLength(front.bandedEdges.length)
})

it('draws all of forty plain parts', () => {
  const { answer, request } = fortyParts()
  const words = named(readSvg(panelsSvg(answer, request)!), 'text').map(({ text }) => text)
  for (const { id } of answer.panels) expect(words).toContain(id)
})

it.each<[string, () => Drawable, string[]]>([
  ['butt joints', shelf, ['120', '240']],
  // The front lies between sides and top: 184 by 1014 mm, the box is two boards of 18 mm more.
  ['an inset front', tower, ['220', '1050']],
])('shows the outer size of a box with %s', (_, make, sizes) => {
  const { answer, request } = make()
  const words = named(readSvg(boxSvg(answer, request)!), 'text').map(({ text }) => text)
  expect(words).toEqual(expect.arrayContaining([...sizes, 'top', 'bottom', 'front', 'back', 'side']))
})

it('shows how deep the top lies in rebated sides', () => {
  const rebateDepthMm = 5
  const box = {
    kind: 'closed' as const,
    outer: { widthMm: 200, heightMm: 300, depthMm: 200 },
    panelThicknessMm: 12,
  }
  const { answer, request } = drawable({
    box: { ...box, joint: 'rebate', rebateDepthMm },
    stock: [{ lengthMm: 1220, widthMm: 610, thicknessMm: 12 }],
  })
  const picture = readSvg(boxSvg(answer, request)!)
  const heightMm = Number(picture.attributes['viewBox']!.split(' ')[3])
  const outer = cornersOf(all(picture).find(({ attributes }) => attributes['class'] === 'outline')!, heightMm)
  const left = Math.min(...outer.map(({ x }) => x))
  const scale = (Math.max(...outer.map(({ x }) => x)) - left) / 200
  const lines = all(picture).filter(({ attributes }) => attributes['class'] === 'hole')
  const uprights = lines
    .map((one) => cornersOf(one, heightMm))
    .filter((ends) => ends.length === 2 && ends[0]!.x === ends[1]!.x)
    .map(([end]) => (end!.x - left) / scale)
  // Of 12 mm of side 12 - 5 stay outside the end of the top.
  for (const place of [7, 193]) expect(uprights.some((x) => Math.abs(x - place) < 0.01)).toBe(true)
})

it('has no view of a box for plain parts', () => {
  const { answer, request } = fortyParts()
  expect(boxSvg(answer, request)).toBeNull()
})
