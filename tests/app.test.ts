import { once } from 'node:events'
import { connect } from 'node:net'
import { request } from 'undici'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { buildApp as buildBare } from '../src/app.ts'
import { buildApp } from './held-app.ts'

const app = await buildApp()
const origin = { url: '', port: 0 }

beforeAll(async () => {
  origin.url = await app.listen({ host: '127.0.0.1', port: 0 })
  origin.port = Number(new URL(origin.url).port)
})
afterAll(() => app.close())

/** Sends bytes that no HTTP client would send and gives back all that comes. */
async function raw(bytes: string): Promise<string> {
  const socket = connect(origin.port, '127.0.0.1')
  const parts: Buffer[] = []
  socket.on('data', (part) => parts.push(part))
  socket.write(bytes)
  await once(socket, 'close')
  return Buffer.concat(parts).toString()
}

describe('the service, really listening', () => {
  it('calculates for a client over the wire', async () => {
    const { statusCode, headers, body } = await request(`${origin.url}/v1/port`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ netVolumeL: '3 L', innerDiameterMm: 26, tuningHz: 105 }),
    })
    expect(statusCode).toBe(200)
    expect(headers['content-type']).toBe('application/json; charset=utf-8')
    expect(await body.json()).toMatchObject({ port: { tuningHz: 105 } })
  })

  it('serves what a spreadsheet cell asks for: OPTIONS, HEAD, GET', async () => {
    const url = `${origin.url}/v1/port?netVolumeL=3&innerDiameterMm=26&tuningHz=105&pick=port.tuningHz`
    const statuses = []
    for (const method of ['OPTIONS', 'HEAD', 'GET'] as const) {
      const { statusCode, body } = await request(url, { method })
      statuses.push(statusCode)
      expect(await body.text()).toBe(method === 'GET' ? '105' : '')
    }
    expect(statuses).toEqual([204, 200, 200])
  })

  it('refuses a body of 10 MB and goes on', async () => {
    const refused = await raw(
      `POST /v1/port HTTP/1.1\r\nhost: x\r\ncontent-type: application/json\r\ncontent-length: 10000000\r\nconnection: close\r\n\r\n{`,
    )
    expect(refused).toMatch(/^HTTP\/1\.1 413 /)
    expect((await request(`${origin.url}/health/live`)).statusCode).toBe(200)
  })

  it.each([
    ['no HTTP at all', 'hello\r\n\r\n', 400],
    ['headers of 20 kB', `GET / HTTP/1.1\r\nhost: x\r\nlong: ${'x'.repeat(20_000)}\r\n\r\n`, 431],
    ['an address of 20 kB', `GET /${'x'.repeat(20_000)} HTTP/1.1\r\nhost: x\r\n\r\n`, 431],
    [
      'two lengths',
      'POST /v1/port HTTP/1.1\r\nhost: x\r\ncontent-length: 3\r\ncontent-length: 4\r\n\r\n{}',
      400,
    ],
  ])('answers %s with a problem', async (_name, bytes, status) => {
    const answer = await raw(bytes)
    expect(answer).toMatch(new RegExp(`^HTTP/1\\.1 ${status} `))
    expect(answer).toContain('application/problem+json')
    expect(JSON.parse(answer.slice(answer.indexOf('\r\n\r\n')))).toMatchObject({ status })
  })
})

describe('the pages', () => {
  it.each(['/docs', '/problems/invalid-input'])('%s comes without anything from elsewhere', async (url) => {
    const response = await app.inject(url)
    expect(response.statusCode).toBe(200)
    expect(response.headers['content-type']).toBe('text/html; charset=utf-8')
    expect(response.headers['content-security-policy']).toContain("default-src 'none'")
    expect(response.body).not.toMatch(/(?:src|href)="(?:https?:)?\/\//)
    expect(response.body).not.toMatch(/<script|style="/)
  })

  it('documents every operation, every problem and a command to copy', async () => {
    const { body } = await app.inject({ url: '/docs', headers: { host: 'bench.local:8080' } })
    expect(body).toContain('id="port"')
    expect(body).toContain('id="portByQuery"')
    expect(body).toContain('curl -s http://bench.local:8080/v1/port')
    expect(body).toContain('/problems/invalid-input')
  })

  it('lets no header write into a page', async () => {
    const { body } = await app.inject({ url: '/docs', headers: { host: 'x"><script>alert(1)</script>' } })
    expect(body).not.toContain('<script')
  })

  it('leads from / to the documentation where no touch page is built', async () => {
    const response = await app.inject('/')
    expect(response.statusCode).toBe(302)
    expect(response.headers.location).toBe('/docs')
  })

  it('the links of the documentation lead somewhere', async () => {
    const { body } = await app.inject('/docs')
    const links = [...body.matchAll(/href="(\/[^"]*)"/g)].map(
      ([, link]) => link?.replaceAll('&#38;', '&') ?? '',
    )
    expect(links.length).toBeGreaterThan(4)
    for (const link of links) {
      const { statusCode, body: target } = await app.inject(link)
      expect(statusCode, link).toBe(link === '/' ? 302 : 200)
      const anchor = link.split('#')[1]
      if (anchor !== undefined) expect(target).toContain(`id="${anchor}"`)
    }
  })

  it.each(['/health/live', '/health/ready'])('%s is fresh', async (url) => {
    const response = await app.inject(url)
    expect(response.statusCode).toBe(200)
    expect(response.headers['cache-control']).toBe('no-store')
  })
})

describe('a mistake of ours', () => {
  it('is a 500 that tells nothing of the inside', async () => {
    const broken = await buildBare()
    broken.get('/broken', { schema: { hide: true } }, () => {
      throw new Error('secret of the inside')
    })
    const response = await broken.inject('/broken?errors=text')
    expect(response.statusCode).toBe(500)
    expect(response.json().type).toBe('/problems/our-fault')
    expect(response.body).not.toContain('secret')
    await broken.close()
  })
})
