import { inflateSync } from 'node:zlib'
import { expect, it } from 'vitest'
import { cutListPdf } from '../../../src/views/drawing/cut-list-drawings.ts'
import { drawable, fortyParts, printed, shelf, tower } from './answers.ts'

const latin = (bytes: Uint8Array): string => Buffer.from(bytes).toString('latin1')

/** What is drawn on the pages, unpacked. */
function streams(bytes: Uint8Array): string[] {
  const parts = latin(bytes).split('stream\n').slice(1)
  return parts.flatMap((part) => {
    try {
      return [inflateSync(Buffer.from(part, 'latin1'), { finishFlush: 2 }).toString('latin1')]
    } catch {
      return []
    }
  })
}

it('gives the same bytes for the same answer', async () => {
  const [first, second] = [await printed(shelf()), await printed(shelf())]
  expect(Buffer.compare(first, second)).toBe(0)
  expect(latin(first).slice(0, 5)).toBe('%PDF-')
})

it.each([
  // A4 is 210 x 297 mm (ISO 216), Letter 8 1/2 x 11 in; a point is 1/72 in.
  ['A4' as const, [(210 / 25.4) * 72, (297 / 25.4) * 72]],
  ['Letter' as const, [8.5 * 72, 11 * 72]],
])('is laid out on %s, upright or on its side', async (paper, sides) => {
  const boxes = [...latin(await printed(tower(), paper)).matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)]
  expect(boxes.length).toBeGreaterThan(5)
  for (const [, width, height] of boxes) {
    const [short, long] = [Number(width), Number(height)].sort((a, b) => a - b)
    expect(short).toBeCloseTo(sides[0]!, 1)
    expect(long).toBeCloseTo(sides[1]!, 1)
  }
})

it('carries its own type, so that ohm and mu print anywhere', async () => {
  const text = latin(await printed(tower()))
  expect(text).toContain('/FontFile2')
  expect(text).not.toMatch(/\/BaseFont \/(Helvetica|Times|Courier)/)
})

it('draws templates at true size: millimetres by the points of a millimetre, the ruler 100 of them', async () => {
  const pages = streams(await printed(shelf()))
  const rulers = pages.filter((page) => {
    const lines = [...page.matchAll(/(-?[\d.]+) (-?[\d.]+) m\n(-?[\d.]+) (-?[\d.]+) l\n/g)]
    return lines.some(([, x1, y1, x2, y2]) => y1 === y2 && Math.abs(Number(x2) - Number(x1) - 100) < 1e-3)
  })
  // One sheet each for the front and the back, the two panels with holes.
  expect(rulers).toHaveLength(2)
  for (const page of rulers) {
    const scales = [...page.matchAll(/([\d.]+) 0 0 ([\d.]+) 0 0 cm/g)].map(([, x, y]) => [
      Number(x),
      Number(y),
    ])
    expect(scales).toHaveLength(1)
    expect(scales[0]![0]).toBeCloseTo(72 / 25.4, 4)
    expect(scales[0]![1]).toBeCloseTo(72 / 25.4, 4)
  }
})

it('has no template for parts without holes', async () => {
  const { answer, request } = fortyParts()
  const [plain, drilled] = [fortyParts().answer.panels, shelf().answer.panels]
  expect(plain.every(({ holes }) => holes.length === 0)).toBe(true)
  const pagesOf = async (panels: typeof plain) =>
    [...latin(await printed({ answer: { ...answer, panels }, request })).matchAll(/\/Type \/Page\b(?!s)/g)]
      .length
  // Forty panels, eight a page; the shelf pair: the box, front, back, the others, two templates.
  expect((await pagesOf(drilled)) - (await pagesOf(plain))).toBe(6 - 5)
})

it('is no document where nothing is asked for', async () => {
  const { answer, request } = drawable({ parts: [], stock: [] })
  expect(await cutListPdf(answer, request)).toBeNull()
})
