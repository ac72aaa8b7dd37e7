import { parse } from 'csv-parse/sync'
import { afterAll, describe, expect, it } from 'vitest'
import { contractOf } from '../../src/api/contract.ts'
import { buildApp } from '../held-app.ts'
import { examplesOf } from './contract-checks.ts'

const app = await buildApp()
await app.ready()
afterAll(() => app.close())
const CASES = examplesOf(contractOf(app))
const PORT = '/v1/port?netVolumeL=4&innerDiameterMm=30&tuningHz=80'

function tablesOf(path: string): string[] {
  const parameters = contractOf(app).paths[path]?.post?.parameters ?? []
  return parameters.find(({ name }) => name === 'table')?.schema.enum?.map(String) ?? []
}

describe('every table of every calculation', () => {
  const rows = CASES.flatMap(({ path, example }) => tablesOf(path).map((table) => ({ path, example, table })))
  it.each(rows)('$path $table', async ({ path, example, table }) => {
    const url = `${path}?format=csv&table=${table}`
    const response = await app.inject({ method: 'POST', url, payload: example as object })
    expect(response.statusCode).toBe(200)
    expect(response.headers['content-type']).toBe('text/csv; charset=utf-8')
    // The reader refuses a row with more or fewer cells than the header.
    const records: string[][] = parse(response.body)
    expect(records[0]?.length).toBeGreaterThan(0)
    expect(records[0]?.every((name) => name !== '')).toBe(true)
  })

  it('holds the numbers of the JSON answer', async () => {
    const { path, example } = CASES.find((row) => row.path === '/v1/box-tuning')!
    const ask = (query: string) =>
      app.inject({ method: 'POST', url: path + query, payload: example as object })
    const { curves } = (await ask('')).json()
    const [header, ...lines]: string[][] = parse((await ask('?format=csv')).body)
    expect(header).toEqual(Object.keys(curves))
    for (const [column, name] of header!.entries())
      expect(lines.map((line) => Number(line[column]))).toEqual(curves[name].map(Number))
  })
})

describe('the form of an answer', () => {
  const NEGOTIATED = [
    { accept: '*/*', type: 'application/json; charset=utf-8' },
    { accept: 'text/csv', type: 'text/csv; charset=utf-8' },
    { accept: 'text/csv;q=0.5, text/plain', type: 'text/plain; charset=utf-8' },
    { accept: 'text/*;q=0.2, application/json;q=0.1', type: 'text/plain; charset=utf-8' },
  ]
  it.each(NEGOTIATED)('Accept: $accept gives $type (RFC 9110, section 12.5.1)', async ({ accept, type }) => {
    const response = await app.inject({ url: PORT, headers: { accept } })
    expect(response.headers['content-type']).toBe(type)
    expect(response.headers['vary']).toBe('accept')
  })
  it.each([
    { query: 'format=pdf', at: '/format' },
    { query: 'format=csv&table=nothing', at: '/table' },
    { query: 'picture=box', at: '/picture' },
  ])('of a calculation that does not have it is a fault: $query', async ({ query, at }) => {
    const response = await app.inject(`${PORT}&${query}`)
    expect(response.statusCode).toBe(422)
    expect(response.json().errors).toEqual([expect.objectContaining({ at })])
  })
  it('that is not on offer is 406 with what is', async () => {
    const response = await app.inject({ url: PORT, headers: { accept: 'application/pdf' } })
    expect(response.statusCode).toBe(406)
    expect(response.json().detail).toContain('csv (text/csv)')
  })
})

describe('the tag of an answer (RFC 9110, sections 8.8.3 and 13.1.2)', () => {
  it('is the same for the same request, another for another form, and on HEAD as on GET', async () => {
    const tagOf = async (url: string, method: 'GET' | 'HEAD' = 'GET') =>
      (await app.inject({ method, url })).headers['etag']
    const tag = await tagOf(PORT)
    expect(tag).toMatch(/^"[^"]+"$/)
    expect(await tagOf(PORT)).toBe(tag)
    expect(await tagOf(PORT, 'HEAD')).toBe(tag)
    expect(await tagOf(`${PORT}&format=csv`)).not.toBe(tag)
  })
  it('in If-None-Match gives 304 without a body, but with tag and Vary', async () => {
    const { etag } = (await app.inject(PORT)).headers
    for (const given of [String(etag), `W/${etag}`, `"other", ${etag}`, '*']) {
      const response = await app.inject({ url: PORT, headers: { 'if-none-match': given } })
      expect([response.statusCode, response.body]).toEqual([304, ''])
      expect(response.headers).toMatchObject({ etag, vary: 'accept' })
    }
  })
  it('is not on errors, and another one brings the answer', async () => {
    expect((await app.inject('/v1/port?netVolumeL=4')).headers['etag']).toBeUndefined()
    const response = await app.inject({ url: PORT, headers: { 'if-none-match': '"other"' } })
    expect(response.statusCode).toBe(200)
  })
})
