import { afterAll, describe, expect, it } from 'vitest'
import { buildApp } from './held-app.ts'

const PAGE = 'http://sheet.example'
const URL = '/v1/port?netVolumeL=4&innerDiameterMm=30&tuningHz=80'
const closed = await buildApp()
const open = await buildApp({ corsOrigins: [PAGE] })
afterAll(() => Promise.all([closed.close(), open.close()]))

describe('pages on other hosts (CORS, WHATWG Fetch standard, section 3.2)', () => {
  it('are not let in unless the settings name them', async () => {
    const { headers } = await closed.inject({ url: URL, headers: { origin: PAGE } })
    expect(headers['access-control-allow-origin']).toBeUndefined()
  })
  it('are let in by name, and no others', async () => {
    const allowed = async (origin: string) =>
      (await open.inject({ url: URL, headers: { origin } })).headers['access-control-allow-origin']
    expect(await allowed(PAGE)).toBe(PAGE)
    expect(await allowed('http://other.example')).toBeUndefined()
  })
  it('are kept apart by caches, as forms of an answer are (RFC 9110, 12.5.5)', async () => {
    const { headers } = await open.inject({ url: URL, headers: { origin: PAGE } })
    const varying = String(headers['vary']).toLowerCase().split(/,\s*/)
    expect(varying.sort()).toEqual(['accept', 'origin'])
    expect((await closed.inject({ url: URL })).headers['vary']).toBe('accept')
  })
  it('may ask first what they may send', async () => {
    const response = await open.inject({
      method: 'OPTIONS',
      url: '/v1/design-check',
      headers: {
        origin: PAGE,
        'access-control-request-method': 'POST',
        'access-control-request-headers': 'content-type',
      },
    })
    expect(response.statusCode).toBe(204)
    expect(response.headers['access-control-allow-methods']).toContain('POST')
  })
  it.each([closed, open])('OPTIONS without an origin, as a spreadsheet asks, is never 400', async (app) => {
    expect((await app.inject({ method: 'OPTIONS', url: URL })).statusCode).toBeLessThan(300)
  })
})
