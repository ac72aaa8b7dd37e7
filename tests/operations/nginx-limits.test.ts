import { createServer, request as httpRequest, type RequestListener } from 'node:http'
import type { AddressInfo } from 'node:net'
import { afterAll, describe, expect, it } from 'vitest'
import { shelfPair } from '../../src/api/design-check/example.ts'
import { startInstances } from './instances.ts'
import { hasNginx, startNginx } from './nginx-before.ts'

const MIB = 1024 * 1024

describe.skipIf(!hasNginx)('an instance behind nginx', async () => {
  if (!hasNginx) return
  const { instances, end } = await startInstances(1, { RATE_LIMIT: '20' })
  const nginx = await startNginx(instances.map(({ address }) => address))
  afterAll(async () => {
    await nginx.end()
    await end()
  })
  const live = `${nginx.address}/health/live`

  it('answers what is too long or too large itself, as problems', async () => {
    expect((await fetch(`${live}?x=${'x'.repeat(9000)}`)).status).toBe(200)
    const long = await fetch(`${live}?x=${'x'.repeat(20_000)}`)
    expect(long.status).toBe(431)
    expect(await long.json()).toMatchObject({ type: '/problems/headers-too-large' })
    for (const size of [9 * MIB, 17 * MIB]) {
      const large = await posted(`${nginx.address}/v1/port`, 'text/csv', 'x'.repeat(size))
      expect(large.status).toBe(413)
      expect(large.type).toContain('application/problem+json')
      expect(JSON.parse(large.text)).toMatchObject({ type: '/problems/too-large', status: 413 })
    }
    // What the service says of it is not put aside.
    const rows = `netVolumeL\n${'3\n'.repeat(20_001)}`
    const sheet = await posted(`${nginx.address}/v1/port`, 'text/csv', rows)
    expect(sheet.status).toBe(413)
    expect(JSON.parse(sheet.text).detail).toContain('20000 rows')
    const json = await posted(`${nginx.address}/v1/port`, 'application/json', ' '.repeat(300_000))
    expect(JSON.parse(json.text).detail).toContain('256 KiB')
  })

  it('takes no word of a client on where it is or how it came', async () => {
    const response = await fetch(`${nginx.address}/v1/design-check?format=html`, {
      method: 'POST',
      headers: {
        'content-type': 'application/json',
        'x-forwarded-host': 'elsewhere.example',
        'x-forwarded-proto': 'gopher',
        forwarded: 'host=elsewhere.example',
      },
      body: JSON.stringify(shelfPair),
    })
    const sheet = await response.text()
    expect(sheet).toContain(nginx.address)
    expect(sheet).not.toMatch(/elsewhere\.example|gopher/)

    const statuses: number[] = []
    for (let i = 0; i < 25; i += 1) {
      const headers = { 'x-forwarded-for': `10.1.1.${i}`, 'x-real-ip': `10.1.1.${i}` }
      statuses.push((await fetch(`${nginx.address}/v1/tools`, { headers })).status)
    }
    expect(statuses.at(-1)).toBe(429)
  })
})

describe.skipIf(!hasNginx)('a request behind nginx', () => {
  it('that ends an instance does not end them all', async () => {
    const asked: number[] = []
    await behindNginx(
      3,
      (index) => (request, response) => {
        if (request.url !== '/poison') return response.end('{}')
        asked.push(index)
        return request.socket.destroy()
      },
      async (address) => {
        const response = await posted(`${address}/poison`, 'application/json', '{}')
        expect(response.status).toBe(503)
        expect(response.retryAfter).toBe('5')
      },
    )
    expect(asked).toHaveLength(2)
  })

  it('that finds an instance busy is put to another, and hears of the instance when that is busy too', async () => {
    const statuses: number[] = []
    let busy = 1
    await behindNginx(
      3,
      (index) => (request, response) => {
        if (request.url === '/work' && index < busy) response.writeHead(503, { 'retry-after': '7' })
        request.resume().on('end', () => response.end(`instance ${index}`))
      },
      async (address) => {
        const ask = () => posted(`${address}/work`, 'application/json', '{"some":"body"}')
        for (let i = 0; i < 9; i += 1) statuses.push((await ask()).status)
        busy = 3
        const refused = await ask()
        expect(refused).toMatchObject({ status: 503, retryAfter: '7' })
        expect(refused.text).toMatch(/^instance /)
      },
    )
    expect(statuses).toEqual(Array(9).fill(200))
  })
})

/** Servers in this process that answer as they are told, behind nginx. */
async function behindNginx(
  count: number,
  answer: (index: number) => RequestListener,
  look: (address: string) => Promise<void>,
) {
  const servers = Array.from({ length: count }, (_, index) => createServer(answer(index)))
  const addresses = await Promise.all(
    servers.map(async (server) => {
      await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
      return `http://127.0.0.1:${(server.address() as AddressInfo).port}`
    }),
  )
  const nginx = await startNginx(addresses)
  await look(nginx.address).finally(async () => {
    await nginx.end()
    for (const server of servers) server.close().closeAllConnections()
  })
}

/** A post whose answer is read even when it comes before all is sent. */
const posted = (url: string, type: string, body: string) =>
  new Promise<{ status: number; type: string; retryAfter: string; text: string }>((resolve, reject) => {
    const headers = { 'content-type': type, 'content-length': body.length }
    const request = httpRequest(url, { method: 'POST', headers }, async (response) => {
      let text = ''
      for await (const part of response) text += part
      const { 'content-type': contentType = '', 'retry-after': retryAfter = '' } = response.headers
      resolve({ status: response.statusCode ?? 0, type: contentType, retryAfter, text })
    })
    request.on('error', reject).end(body)
  })
