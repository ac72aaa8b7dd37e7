import { Writable } from 'node:stream'
import { setTimeout as delay } from 'node:timers/promises'
import Fastify, { type FastifyBaseLogger, LogController } from 'fastify'
import { Pool } from 'undici'
import { afterAll, describe, expect, it } from 'vitest'
import { buildApp as buildBare } from '../../src/app.ts'
import { logAt, logRequests } from '../../src/service/log.ts'
import { requestId } from '../../src/service/request-ids.ts'
import { shutdown } from '../../src/service/shutdown.ts'
import { rawConnection, statuses } from '../hardening/raw.ts'
import { buildApp } from '../held-app.ts'

const PORT_CALL = '/v1/port?netVolumeL=4&innerDiameterMm=30&tuningHz=80'

describe('/metrics', () => {
  it('times requests by route and class of status, in the text format of Prometheus (0.0.4)', async () => {
    const app = await buildApp({ poolLoad: () => ({ running: 2, waiting: 3 }) })
    await app.inject(PORT_CALL)
    await app.inject(`${PORT_CALL}&pick=nothing.here`)
    await app.inject('/no/such/address?secret=1')
    const { body, headers, statusCode } = await app.inject('/metrics')
    expect(statusCode).toBe(200)
    expect(headers['content-type']).toContain('text/plain; version=0.0.4')
    expect(body).toContain(
      'http_request_duration_seconds_count{method="GET",route="/v1/port",status="2xx"} 1',
    )
    expect(body).toContain(
      'http_request_duration_seconds_count{method="GET",route="/v1/port",status="4xx"} 1',
    )
    expect(body).toContain('route="none",status="4xx"} 1')
    expect(body).toMatch(/^heavy_work_running 2$/m)
    expect(body).toMatch(/^heavy_work_waiting 3$/m)
    expect(body).toMatch(/^process_resident_memory_bytes \d/m)
    expect(body).not.toContain('secret')
    await app.close()
  })

  it('is not there when it is switched off', async () => {
    const app = await buildApp()
    expect((await app.inject('/metrics')).statusCode).toBe(404)
    await app.close()
  })
})

describe('too many requests', () => {
  it('are answered 429 with the time to wait, client by client; whoever keeps the service is not counted', async () => {
    const app = await buildApp({
      rateLimit: 3,
      trustProxy: ['127.0.0.1'],
      poolLoad: () => ({ running: 0, waiting: 0 }),
    })
    const from = (client: string, url = PORT_CALL) =>
      app.inject({ url, headers: { 'x-forwarded-for': client } })
    for (let i = 0; i < 3; i += 1) expect((await from('10.1.1.1')).statusCode).toBe(200)
    const refused = await from('10.1.1.1')
    expect(refused.statusCode).toBe(429)
    expect(refused.json()).toMatchObject({ type: '/problems/too-many', status: 429 })
    expect(Number(refused.headers['retry-after'])).toBeGreaterThan(0)
    expect((await from('10.1.1.2')).statusCode).toBe(200)
    for (const url of ['/health/live', '/%68ealth/live', '/metrics', '/metrics?x=1'])
      expect((await from('10.1.1.1', url)).statusCode).toBe(200)
    expect((await from('10.1.1.1', '/health/nothing')).statusCode).toBe(429)
    await app.close()
  })

  it('are counted where nothing is, too', async () => {
    const app = await buildApp({ rateLimit: 2 })
    const statuses: number[] = []
    for (const url of [PORT_CALL, '/nowhere', '/nowhere', '/v1/design-check', PORT_CALL])
      statuses.push((await app.inject({ url })).statusCode)
    expect(statuses).toEqual([200, 404, 429, 429, 429])
    await app.close()
  })

  it('cannot be disguised by a header when no proxy is trusted', async () => {
    const app = await buildApp({ rateLimit: 1 })
    const from = (client: string) => app.inject({ url: PORT_CALL, headers: { 'x-forwarded-for': client } })
    expect((await from('10.1.1.1')).statusCode).toBe(200)
    expect((await from('10.1.1.2')).statusCode).toBe(429)
    await app.close()
  })
})

describe('a machine that cannot keep up', async () => {
  const app = await buildBare({ mostLateMs: 200 })
  app.post<{ Params: { ms: number } }>(
    '/busy/:ms',
    { schema: { hide: true } },
    async ({ params: { ms } }) => {
      const end = performance.now() + Number(ms)
      while (performance.now() < end);
      return {}
    },
  )
  const origin = await app.listen({ host: '127.0.0.1', port: 0 })
  afterAll(() => app.close())
  /** Requests that arrive together, each on a connection that is open already; bodies come after their heads. */
  const together = async (count: number, path: string) => {
    const post = { method: 'POST', headers: { 'content-type': 'application/json' }, body: '{}' } as const
    const pool = new Pool(origin, { connections: count })
    const all = (url: string) =>
      Promise.all(
        Array.from({ length: count }, async () => {
          const { statusCode, headers, body } = await pool.request({
            path: url,
            ...(url.startsWith('/busy') ? post : { method: 'GET' }),
          })
          await body.dump()
          return { statusCode, retryAfter: headers['retry-after'] }
        }),
      )
    await all('/health/live')
    const answers = await all(path)
    await pool.close()
    return answers
  }

  it('refuses with 503 and the time to wait what has waited too long, and takes requests again', async () => {
    const answers = await together(40, '/busy/30')
    const refused = answers.filter(({ statusCode }) => statusCode === 503)
    expect(answers.filter(({ statusCode }) => statusCode === 200).length).toBeGreaterThanOrEqual(4)
    expect(refused.length).toBeGreaterThan(0)
    expect(refused.every(({ retryAfter }) => retryAfter === '5')).toBe(true)
    expect(refused.length + answers.filter(({ statusCode }) => statusCode === 200).length).toBe(40)
    expect((await together(1, PORT_CALL))[0]?.statusCode).toBe(200)
  })

  it('refuses what has waited with its head taken, until the body came', async () => {
    const connections = Array.from({ length: 40 }, () => rawConnection(Number(new URL(origin).port)))
    const head =
      'POST /busy/30 HTTP/1.1\r\nhost: x\r\nconnection: close\r\ncontent-type: application/json\r\n'
    for (const { socket } of connections) socket.write(`${head}content-length: 2\r\n\r\n`)
    await delay(200)
    for (const { socket } of connections) socket.write('{}')
    const answers = await Promise.all(connections.map(({ answer }) => answer(10_000)))
    expect(new Set(answers.map(({ text }) => statuses(text)[0]))).toEqual(new Set([200, 503]))
  })

  it('refuses nobody for a few long calculations, nor whoever keeps the service', async () => {
    for (const { statusCode } of await together(3, '/busy/400')) expect(statusCode).toBe(200)
    for (const { statusCode } of await together(40, '/health/live')) expect(statusCode).toBe(200)
  })
})

describe('an answer that the client has already (RFC 9110, sections 8.6 and 15.4.5)', () => {
  it('is 304 with nothing; a length would be that of the 200', async () => {
    const app = await buildBare()
    const port = Number(new URL(await app.listen({ host: '127.0.0.1', port: 0 })).port)
    const { headers } = await app.inject(PORT_CALL)
    const lengths: (string | undefined)[] = []
    for (const method of ['GET', 'HEAD']) {
      const { socket, answer } = rawConnection(port)
      socket.write(
        `${method} ${PORT_CALL} HTTP/1.1\r\nhost: x\r\nconnection: close\r\nif-none-match: ${headers['etag']}\r\n\r\n`,
      )
      const { text } = await answer()
      expect(statuses(text)).toEqual([304])
      expect(text).not.toMatch(/^(transfer-encoding|content-type):/im)
      lengths.push(/^content-length: (\d+)\r$/im.exec(text)?.[1])
      expect(text.endsWith('\r\n\r\n')).toBe(true)
    }
    expect(lengths).toEqual([undefined, headers['content-length']])
    await app.close()
  })
})

describe('the name of a request', () => {
  it('comes back with every answer, and stands in a problem', async () => {
    const app = await buildApp()
    const named = await app.inject({ url: '/no/such', headers: { 'x-request-id': 'kiosk-7.a' } })
    expect(named.headers['x-request-id']).toBe('kiosk-7.a')
    expect(named.json().instance).toBe('#kiosk-7.a')
    const unnamed = await app.inject(PORT_CALL)
    expect(unnamed.headers['x-request-id']).toMatch(/^[\da-f-]{36}$/)
    expect(unnamed.headers['x-content-type-options']).toBe('nosniff')
    await app.close()
  })

  it.each(['', 'a b', 'x\ny', '<script>', 'x'.repeat(101), 'ä'])('is not taken from %j', (given) => {
    expect(requestId({ headers: { 'x-request-id': given } })).toMatch(/^[\da-f]{8}-/)
  })
})

describe('the log', () => {
  it('holds what was asked and how it went, never a query, a header or a body', async () => {
    const lines: string[] = []
    const stream = new Writable({
      write(chunk, _encoding, done) {
        lines.push(String(chunk))
        done()
      },
    })
    const loggerInstance: FastifyBaseLogger = logAt('info', stream)
    const logController = new LogController({ disableRequestLogging: true })
    const app = Fastify({ loggerInstance, logController, genReqId: requestId })
    logRequests(app)
    app.post('/v1/thing/:name', () => ({}))
    await app.inject({
      method: 'POST',
      url: '/v1/thing/secret-path?name=secret-query',
      headers: { authorization: 'secret-header', 'x-request-id': 'abc' },
      payload: { name: 'secret-body' },
    })
    await app.close()
    const log = lines.join('')
    expect(lines).toHaveLength(1)
    expect(JSON.parse(log)).toMatchObject({
      method: 'POST',
      route: '/v1/thing/:name',
      status: 200,
      reqId: 'abc',
      ms: expect.any(Number),
    })
    expect(log).not.toContain('secret')
  })
})

describe('the end of the service', () => {
  it('is announced first, then waits for what was begun', async () => {
    const { isDraining, drain } = shutdown(10)
    const app = await buildApp({ isReady: () => !isDraining() })
    expect((await app.inject('/health/ready')).statusCode).toBe(200)
    const ended = drain(app, 5)
    const { statusCode, headers } = await app.inject('/health/ready')
    expect(statusCode).toBe(503)
    expect(headers['cache-control']).toBe('no-store')
    expect((await app.inject('/health/live')).statusCode).toBe(200)
    expect(await ended).toBe(true)
  })

  it('is cut when something does not finish in its time', async () => {
    const app = Fastify()
    app.addHook('onClose', () => new Promise(() => undefined))
    await app.ready()
    expect(await shutdown(1).drain(app, 0.05)).toBe(false)
  })
})
