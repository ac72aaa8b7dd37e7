import { createRequire } from 'node:module'
import type { DxfParser, ICircleEntity, ILineEntity } from 'dxf-parser'
import { describe, expect, it } from 'vitest'
import { panelsDxf } from '../../../src/views/drawing/cut-list-drawings.ts'
import { type Drawable, fortyParts, shelf, tower } from './answers.ts'

// Read back by dxf-parser, which knows nothing of what wrote the file.
// Its main file is the class itself, which its types do not say.
const Parser = createRequire(import.meta.url)('dxf-parser') as typeof DxfParser
const read = (text: string) => new Parser().parseSync(text)!
const isCircle = (entity: { type: string }): entity is ICircleEntity => entity.type === 'CIRCLE'
const isLine = (entity: { type: string }): entity is ILineEntity => entity.type === 'LINE'

describe.each<[string, () => Drawable]>([
  ['a shelf pair', shelf],
  ['a tower with a slot', tower],
])('the front of %s for a laser', (_, make) => {
  const { answer } = make()
  const front = answer.panels.find(({ id }) => id === 'front')!
  const { entities, header } = read(panelsDxf(answer, 'front')!)

  it('is in millimetres', () => {
    // 4 stands for millimetres in $INSUNITS (reference of the format, Autodesk, from memory).
    expect(header['$INSUNITS']).toBe(4)
  })

  it('has its outline at finished size, closed', () => {
    const outline = entities.filter(isLine).filter(({ layer }) => layer === 'OUTLINE')
    const ends = outline.flatMap(({ vertices }) => vertices.map(({ x, y }) => `${x} ${y}`))
    const { lengthMm, widthMm } = front
    expect(new Set(ends)).toEqual(new Set([`0 0`, `${lengthMm} 0`, `${lengthMm} ${widthMm}`, `0 ${widthMm}`]))
    expect(ends).toHaveLength(8)
  })

  it('has every round hole at its centre and diameter, blind ones apart', () => {
    const circles = entities
      .filter(isCircle)
      .map(({ layer, center, radius }) => [layer, center.x, center.y, 2 * radius])
    const wanted = front.holes
      .filter(({ diameterMm }) => diameterMm !== null)
      .map(({ through, xMm, yMm, diameterMm }) => [through ? 'HOLES' : 'BLIND', xMm, yMm, diameterMm!])
    expect(circles).toHaveLength(wanted.length)
    for (const [index, [layer, ...numbers]] of wanted.entries()) {
      expect(circles[index]![0]).toBe(layer)
      for (const [place, number] of numbers.entries())
        expect(circles[index]![place + 1]).toBeCloseTo(Number(number), 6)
    }
  })

  it('has slots as rectangles', () => {
    const lines = entities.filter(isLine).filter(({ layer }) => layer === 'HOLES')
    const slots = front.holes.filter(({ slotWidthMm }) => slotWidthMm !== null)
    expect(lines).toHaveLength(4 * slots.length)
    for (const { xMm, yMm, slotWidthMm, slotHeightMm } of slots) {
      const x = lines.flatMap(({ vertices }) => vertices.map((vertex) => vertex.x))
      const y = lines.flatMap(({ vertices }) => vertices.map((vertex) => vertex.y))
      expect(Math.min(...x)).toBeCloseTo(xMm - slotWidthMm! / 2, 6)
      expect(Math.max(...x)).toBeCloseTo(xMm + slotWidthMm! / 2, 6)
      expect(Math.min(...y)).toBeCloseTo(yMm - slotHeightMm! / 2, 6)
      expect(Math.max(...y)).toBeCloseTo(yMm + slotHeightMm! / 2, 6)
    }
  })

  it('has nothing but lines, circles and texts, which every reader knows', () => {
    expect(new Set(entities.map(({ type }) => type))).toEqual(new Set(['LINE', 'CIRCLE', 'TEXT']))
  })
})

it('lays all panels side by side, none on another', () => {
  const { answer } = fortyParts()
  const outline = read(panelsDxf(answer)!)
    .entities.filter(isLine)
    .filter(({ layer }) => layer === 'OUTLINE')
  const spans = answer.panels.map((_, index) => {
    const x = outline
      .slice(4 * index, 4 * index + 4)
      .flatMap(({ vertices }) => vertices.map((vertex) => vertex.x))
    return { from: Math.min(...x), to: Math.max(...x) }
  })
  expect(outline).toHaveLength(4 * answer.panels.length)
  for (const [index, { from, to }] of spans.entries()) {
    expect(to - from).toBeCloseTo(answer.panels[index]!.lengthMm, 6)
    // A router bit of 12 mm passes between neighbours.
    if (index > 0) expect(from - spans[index - 1]!.to).toBeGreaterThan(12)
  }
})

it('keeps signs that the format cannot hold out of its text', () => {
  const { answer } = shelf()
  const odd = { ...answer.panels[0]!, id: 'H\u00f6he\n\u{1f600} 4 \u03a9' }
  const text = panelsDxf({ panels: [odd] })!
  expect(text).toMatch(/^[ -~\r\n]*$/)
  expect(read(text).entities.filter(({ type }) => type === 'TEXT')).toHaveLength(1)
})

it('gives no file for a panel that is not there', () => {
  expect(panelsDxf(shelf().answer, 'roof')).toBeNull()
})
