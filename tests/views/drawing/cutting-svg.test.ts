import { describe, expect, it } from 'vitest'
import { cuttingSvg } from '../../../src/views/drawing/cut-list-drawings.ts'
import { type Drawable, drawable, fortyParts, shelf, tower } from './answers.ts'
import { all, cornersOf, type Element, named, readSvg } from './read-svg.ts'

const heightOf = (picture: Element): number => Number(picture.attributes['viewBox']!.split(' ')[3])

/** Upright rectangles of a role, y upwards. */
function rectangles(picture: Element, role: string) {
  return all(picture)
    .filter(({ name, attributes }) => name === 'path' && attributes['class'] === role)
    .map((path) => {
      const corners = cornersOf(path, heightOf(picture))
      const [x, y] = [corners.map((corner) => corner.x), corners.map((corner) => corner.y)]
      return {
        x: Math.min(...x),
        y: Math.min(...y),
        length: Math.max(...x) - Math.min(...x),
        width: Math.max(...y) - Math.min(...y),
      }
    })
}

const CASES: [string, () => Drawable][] = [
  ['a shelf pair', shelf],
  ['a tower', tower],
  ['forty parts', fortyParts],
]

describe.each(CASES)('the cutting diagram of %s', (_, make) => {
  const { answer, request } = make()
  const picture = readSvg(cuttingSvg(answer, request, 0)!)
  const sheet = answer.sheets[0]!
  const board = rectangles(picture, 'outline')[0]!
  const scale = board.length / sheet.lengthMm
  const words = named(picture, 'text').map(({ text }) => text)

  it('says to those who hear it what it is, and prints at its size', () => {
    expect(picture.attributes['role']).toBe('img')
    const [title, desc] = picture.attributes['aria-labelledby']!.split(' ')
    expect(named(picture, 'title')[0]).toMatchObject({ attributes: { id: title } })
    expect(named(picture, 'title')[0]!.text).toContain(sheet.stock)
    expect(named(picture, 'desc')[0]).toMatchObject({ attributes: { id: desc } })
    const [, , width, height] = picture.attributes['viewBox']!.split(' ')
    expect([picture.attributes['width'], picture.attributes['height']]).toEqual([`${width}mm`, `${height}mm`])
  })

  it('has the board in one scale', () => {
    expect(board.width / sheet.widthMm).toBeCloseTo(scale, 4)
  })

  it('has every part where the answer puts it', () => {
    const faces = rectangles(picture, 'face')
    for (const part of sheet.parts) {
      const [length, width] = part.turned ? [part.widthMm, part.lengthMm] : [part.lengthMm, part.widthMm]
      const there = faces.some(
        (face) =>
          Math.abs(face.x - board.x - scale * part.xMm) < 0.01 &&
          Math.abs(face.y - board.y - scale * part.yMm) < 0.01 &&
          Math.abs(face.length - scale * length) < 0.01 &&
          Math.abs(face.width - scale * width) < 0.01,
      )
      expect(there, part.id).toBe(true)
    }
  })

  it('has the size of every part in words, on it or in the list of small ones', () => {
    const said = words.join(' ')
    for (const { lengthMm, widthMm } of sheet.parts)
      expect(said).toContain(`${Number(lengthMm.toFixed(1))} × ${Number(widthMm.toFixed(1))}`)
  })

  it('numbers every cut once', () => {
    const steps = answer.cuts.filter((cut) => cut.sheet === 0).map(({ step }) => String(step))
    const numbers = words.filter((text) => /^\d+$/.test(text)).sort((a, b) => Number(a) - Number(b))
    expect(numbers).toEqual(steps)
  })

  it('draws every kerf as wide as the saw, at least as wide as can be seen, and inside the board', () => {
    const kerfs = rectangles(picture, 'kerf')
    const least = Math.max(0.3, scale * request.workshop!.kerfMm!)
    expect(kerfs).toHaveLength(answer.cuts.filter((cut) => cut.sheet === 0).length)
    for (const kerf of kerfs) {
      expect(Math.min(kerf.length, kerf.width)).toBeLessThanOrEqual(least + 0.01)
      expect(kerf.x).toBeGreaterThan(board.x - 0.2)
      expect(kerf.x + kerf.length).toBeLessThan(board.x + board.length + 0.2)
    }
  })

  it('stays on its paper', () => {
    const [, , width, height] = picture.attributes['viewBox']!.split(' ').map(Number)
    for (const { x, y } of all(picture).flatMap((element) => cornersOf(element, height!))) {
      expect(x).toBeGreaterThanOrEqual(0)
      expect(x).toBeLessThanOrEqual(width!)
      expect(y).toBeGreaterThanOrEqual(0)
      expect(y).toBeLessThanOrEqual(height!)
    }
  })
})

it('warns of narrow strips beside the plan that has some', () => {
  const { answer, request } = fortyParts()
  expect(cuttingSvg(answer, request)).toContain('push stick')
})

it('says which parts found no board', () => {
  const { answer, request } = drawable({
    parts: [
      { id: 'shelf', lengthMm: 300, widthMm: 200 },
      { id: 'door', lengthMm: 900, widthMm: 500, count: 2 },
    ],
    stock: [{ lengthMm: 400, widthMm: 300 }],
  })
  const said = named(readSvg(cuttingSvg(answer, request)!), 'text').map(({ text }) => text)
  expect(said.join(' ')).toMatch(/Found no board: 2 × door, which a board of \d/)
})

it('marks the part that must follow the grain with an arrow along the grain', () => {
  // A square board with its grain upwards: the part's length has to lie upwards too, so it is turned.
  const { answer, request } = drawable({
    parts: [{ id: 'slat', lengthMm: 900, widthMm: 400, grain: 'length' }],
    stock: [{ lengthMm: 1000, widthMm: 1000, grain: 'width' }],
  })
  expect(answer.sheets[0]!.parts[0]!.turned).toBe(true)
  const said = named(readSvg(cuttingSvg(answer, request)!), 'text').map(({ text }) => text)
  expect(said).toContain('900 × 400 ↕')
  expect(said).toContain('turned')
})

it('gives no picture of a board that is not cut', () => {
  expect(cuttingSvg(shelf().answer, {}, 7)).toBeNull()
})
