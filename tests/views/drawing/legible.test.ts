import { describe, expect, it } from 'vitest'
import { boxSvg, cuttingSvg, panelsSvg } from '../../../src/views/drawing/cut-list-drawings.ts'
import { type Drawable, fortyParts, mitred, shelf, tiny, tower } from './answers.ts'
import { type Element, named, readSvg } from './read-svg.ts'

interface Box {
  words: string
  left: number
  right: number
  top: number
  bottom: number
}

// Narrower than the face really runs (its figures are 0.64 of the size wide), so that what meets here truly overlaps.
const WIDTH = 0.5
const HEIGHT = 0.7

/** What a line of type covers at least. */
function boxOf({ text, attributes }: Element): Box {
  const [x, y, size] = [Number(attributes['x']), Number(attributes['y']), Number(attributes['font-size'])]
  const long = WIDTH * size * text.length
  const before = { start: 0, middle: long / 2, end: long }[attributes['text-anchor'] ?? ''] ?? 0
  return attributes['transform'] === undefined
    ? { words: text, left: x - before, right: x - before + long, top: y - HEIGHT * size, bottom: y }
    : { words: text, left: x - HEIGHT * size, right: x, top: y + before - long, bottom: y + before }
}

const meet = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom

function overlaps(svg: string): string[] {
  const boxes = named(readSvg(svg), 'text').map(boxOf)
  return boxes.flatMap((a, index) =>
    boxes.slice(index + 1).flatMap((b) => (meet(a, b) ? [`"${a.words}" and "${b.words}"`] : [])),
  )
}

const CASES: [string, () => Drawable][] = [
  ['a shelf pair', shelf],
  ['a tower', tower],
  ['a tiny box', tiny],
  ['a mitred box', mitred],
  ['forty parts', fortyParts],
]

describe.each(CASES)('no words lie on others: %s', (_, make) => {
  const { answer, request } = make()
  it.each([
    ['cutting diagram', cuttingSvg(answer, request)],
    ['panels', panelsSvg(answer, request)],
    ['box', boxSvg(answer, request)],
  ])('%s', (_name, svg) => {
    if (svg !== null) expect(overlaps(svg)).toEqual([])
  })
})

it('sees words that do lie on others', () => {
  const picture = (y: number) =>
    `<svg><text x="0" y="10" font-size="3" text-anchor="start">one</text><text x="1" y="${y}" font-size="3" text-anchor="start">two</text></svg>`
  expect(overlaps(picture(11))).toHaveLength(1)
  expect(overlaps(picture(14))).toHaveLength(0)
})
