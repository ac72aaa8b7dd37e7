import { readFileSync } from 'node:fs'
import { afterAll, describe, expect, it } from 'vitest'
import { contractOf } from '../../src/api/contract.ts'
import { buildApp } from '../held-app.ts'
import { examplesOf } from './contract-checks.ts'

const app = await buildApp()
await app.ready()
afterAll(() => app.close())
const contract = contractOf(app)
const CASES = examplesOf(contract)
const SHELF_PAIR = JSON.parse(readFileSync(new URL('../designs/shelf-pair.json', import.meta.url), 'utf8'))

const wordsOf = (path: string, option: string): string[] => {
  const parameter = contract.paths[path]?.post?.parameters?.find(({ name }) => name === option)
  return parameter?.schema.enum?.map(String) ?? []
}
const bodyOf = (path: string, example: unknown) => (path === '/v1/design-check' ? SHELF_PAIR : example)

/** The names of open elements as they are met, so that one closed wrongly is found: a reader that is not ours. */
function unbalanced(xml: string): string[] {
  const open: string[] = []
  const faults: string[] = []
  for (const [, end, name = '', self] of xml.matchAll(/<(\/?)([a-zA-Z][\w-]*)(?:\s[^<>]*?)?(\/?)>/g)) {
    if (self === '/') continue
    if (end !== '/') open.push(name)
    else if (open.pop() !== name) faults.push(name)
  }
  return [...faults, ...open]
}

describe('every picture of every calculation', () => {
  const rows = CASES.flatMap(({ path, example }) =>
    wordsOf(path, 'picture').map((picture) => ({ path, example, picture })),
  )
  it.each(rows)('$path $picture', async ({ path, example, picture }) => {
    const response = await app.inject({
      method: 'POST',
      url: `${path}?format=svg&picture=${picture}`,
      payload: bodyOf(path, example) as object,
    })
    expect(response.statusCode).toBe(200)
    expect(response.headers['content-type']).toBe('image/svg+xml; charset=utf-8')
    expect(response.body).toMatch(/^<svg [^>]*role="img"/)
    expect(response.body).toMatch(/<title[^>]*>[^<]+<\/title>/)
    expect(response.body).toMatch(/<desc[^>]*>[^<]+<\/desc>/)
    expect(response.body).not.toMatch(/NaN|undefined|Infinity/)
    expect(unbalanced(response.body)).toEqual([])
  })
})

describe('sheets', () => {
  const post = (query: string, payload: object = SHELF_PAIR) =>
    app.inject({ method: 'POST', url: `/v1/design-check?${query}`, payload })

  it.each(['a4', 'letter'])('to print, on %s', async (paper) => {
    const response = await post(`format=pdf&paper=${paper}`)
    expect(response.headers['content-type']).toBe('application/pdf')
    expect(response.rawPayload.subarray(0, 5).toString()).toBe('%PDF-')
    // Sides of A4 (ISO 216) and Letter (ANSI Y14.1) in points of 1/72 inch.
    expect(response.rawPayload.toString('latin1')).toMatch(paper === 'a4' ? /595\.2/ : /\b612\b/)
  })

  it('for a cutting program', async () => {
    const response = await post('format=dxf')
    expect(response.headers['content-type']).toBe('image/vnd.dxf')
    expect(response.body).toContain('SECTION')
  })

  it('have the same bytes for the same design', async () => {
    const [one, other] = await Promise.all([post('format=pdf'), post('format=pdf')])
    expect(one?.rawPayload.equals(other!.rawPayload)).toBe(true)
  })

  it('of a box without sides tell what is known, and its drawings are refused with the reason', async () => {
    const { outer: _, ...box } = SHELF_PAIR.box
    const volume = { ...SHELF_PAIR, box: { ...box, netVolumeL: 3 } }
    const sheet = await post('format=pdf', volume)
    expect(sheet.statusCode).toBe(200)
    expect(sheet.rawPayload.length).toBeLessThan((await post('format=pdf')).rawPayload.length)
    const drawing = await post('format=svg&picture=cutting', volume)
    expect(drawing.statusCode).toBe(422)
    expect(drawing.json().type).toBe('/problems/nothing-to-draw')
  })
})

it('the name that a request gives its design cannot break out of a picture', async () => {
  const response = await app.inject({
    method: 'POST',
    url: '/v1/design-check?format=svg',
    payload: { ...SHELF_PAIR, name: '<script>alert(1)</script>&"\u0001' },
  })
  expect(response.body).not.toContain('<script>')
  expect(unbalanced(response.body)).toEqual([])
})
