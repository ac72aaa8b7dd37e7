import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { DxfParser } from 'dxf-parser'
import { afterAll, describe, expect, it } from 'vitest'
import { contractOf } from '../../src/api/contract.ts'
import { buildApp } from '../held-app.ts'
import { named, readSvg } from '../views/drawing/read-svg.ts'

const Parser = createRequire(import.meta.url)('dxf-parser') as typeof DxfParser
const app = await buildApp()
await app.ready()
afterAll(() => app.close())
const SHELF_PAIR = JSON.parse(readFileSync(new URL('../designs/shelf-pair.json', import.meta.url), 'utf8'))

const { name: _, wiring: __, amplifier: ___, programme: ____, wants: _____, ...BOX } = SHELF_PAIR
/** Two boards of 300 x 200 mm that take one part each. */
const PARTS = {
  parts: [
    { id: 'shelf', lengthMm: 290, widthMm: 190 },
    { id: 'door', lengthMm: 280, widthMm: 180 },
  ],
  stock: [
    { id: 'oak', lengthMm: 300, widthMm: 200 },
    { id: 'birch', lengthMm: 300, widthMm: 200 },
  ],
}

const get = (query: string, payload: object, path = '/v1/cut-list') =>
  app.inject({ method: 'POST', url: `${path}?${query}`, payload })
const wordsOf = (svg: string) =>
  named(readSvg(svg), 'text')
    .map(({ text }) => text)
    .join('\n')

describe('one drawing alone', () => {
  it.each([1, 2])('board %d by its number, counted from 1', async (sheet) => {
    const { sheets } = (await get('', PARTS)).json()
    expect(sheets).toHaveLength(2)
    const words = wordsOf((await get(`format=svg&picture=cutting&sheet=${sheet}`, PARTS)).body)
    const all = wordsOf((await get('format=svg&picture=cutting', PARTS)).body)
    for (const [index, { stock }] of sheets.entries()) {
      expect(words.includes(`Cutting diagram of ${stock}`)).toBe(index + 1 === sheet)
      expect(all).toContain(`Cutting diagram of ${stock}`)
    }
  })

  it.each(['/v1/cut-list', '/v1/design-check'])('a panel by its name: %s', async (path) => {
    const body = path === '/v1/cut-list' ? BOX : SHELF_PAIR
    const words = wordsOf((await get('format=svg&picture=panels&panel=back', body, path)).body)
    expect(words).toContain('Panel back')
    expect(words).not.toContain('Panel front')
    // The name of a panel tells the picture as well.
    expect(wordsOf((await get('format=svg&panel=back', body, path)).body)).toBe(words)
    const dxf = new Parser().parseSync((await get('format=dxf&panel=back', body, path)).body)
    const texts = dxf?.entities.flatMap((entity) => ('text' in entity ? [String(entity.text)] : []))
    expect(texts).toHaveLength(1)
    expect(texts?.[0]).toMatch(/^back,/)
    const outline = dxf?.entities.filter(({ layer, type }) => layer === 'OUTLINE' && type === 'LINE')
    expect(outline).toHaveLength(4)
  })
})

describe('what is not there to choose is refused by name', () => {
  it.each([
    ['format=svg&picture=panels&panel=bakc', '/panel', /one of front, back, .*did you mean "back"\?/],
    ['format=dxf&panel=lid', '/panel', /must be one of front, back/],
    ['format=svg&picture=cutting&sheet=2', '/sheet', /is 2, but one board is cut/],
    ['format=svg&picture=cutting&sheet=0', '/sheet', /at least 1/],
    ['format=svg&picture=cutting&sheet=first', '/sheet', /whole number/],
    ['format=svg&picture=box&panel=back', '/panel', /goes with picture=panels of svg, or with dxf/],
    ['format=svg&picture=panels&sheet=1', '/sheet', /goes with picture=cutting/],
    ['format=dxf&sheet=1', '/sheet', /goes with picture=cutting/],
  ])('%s', async (query, at, message) => {
    for (const [path, body] of [
      ['/v1/cut-list', BOX],
      ['/v1/design-check', SHELF_PAIR],
    ]) {
      const response = await get(query, body, path)
      expect(response.statusCode).toBe(422)
      expect(response.json().errors).toEqual([{ at, message: expect.stringMatching(message) }])
    }
  })

  it('by a calculation without such drawings as any unknown name', async () => {
    const response = await get('panel=front', {}, '/v1/port')
    expect(response.json().errors).toContainEqual({
      at: '/panel',
      message: expect.stringContaining('is not known here'),
    })
  })
})

it('the contract declares them where they are', () => {
  const { paths } = contractOf(app)
  const having = Object.entries(paths).filter(([, path]) =>
    path?.post?.parameters?.some(({ name }) => name === 'panel'),
  )
  expect(having.map(([path]) => path).sort()).toEqual(['/v1/cut-list', '/v1/design-check'])
})
