import type { AddressInfo } from 'node:net'
import { setTimeout as delay } from 'node:timers/promises'
import { gzipSync } from 'node:zlib'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { buildApp } from '../../src/app.ts'
import { rawConnection, statuses } from './raw.ts'

let app: Awaited<ReturnType<typeof buildApp>>
let port = 0
beforeAll(async () => {
  app = await buildApp({ requestTimeoutMs: 1200 })
  await app.listen({ host: '127.0.0.1', port: 0 })
  const address = app.server.address()
  port = isAddress(address) ? address.port : 0
})
afterAll(() => app.close())
const isAddress = (address: AddressInfo | string | null): address is AddressInfo =>
  typeof address === 'object' && address !== null

const BODY = JSON.stringify({ netVolumeL: 4, innerDiameterMm: 30, tuningHz: 80 })
const POST = `POST /v1/port HTTP/1.1\r\nhost: x\r\ncontent-type: application/json\r\n`
const WHOLE = `${POST}content-length: ${BODY.length}\r\n\r\n${BODY}`

async function send(bytes: string | Buffer, withinMs?: number) {
  const { socket, answer } = rawConnection(port)
  socket.write(bytes)
  return answer(withinMs)
}
/** A request on a connection of its own, to see that the service is well. */
const isWell = async () =>
  expect(statuses((await send(WHOLE.replace('host: x', 'host: x\r\nconnection: close'))).text)).toEqual([200])

/** RFC 9112 (HTTP/1.1) asks for 400 where nothing else is said. */
describe('broken requests are refused with 4xx, and the service is well afterwards', () => {
  it.each<[string, string, number[]]>([
    ['two lengths that differ', `${POST}content-length: 3\r\ncontent-length: 4\r\n\r\n{}`, [400]],
    [
      'length and chunks at once (RFC 9112, section 6.1)',
      `${POST}content-length: 3\r\ntransfer-encoding: chunked\r\n\r\n0\r\n\r\n`,
      [400],
    ],
    [
      'a coding that is not chunked last',
      `${POST}transfer-encoding: chunked, identity\r\n\r\n0\r\n\r\n`,
      [400],
    ],
    [
      'a size of chunk that is no number',
      `${POST}transfer-encoding: chunked\r\n\r\nzz\r\n{}\r\n0\r\n\r\n`,
      [400],
    ],
    ['a huge size of chunk', `${POST}transfer-encoding: chunked\r\n\r\nfffffffffffffffff\r\n{}`, [400]],
    ['a negative length', `${POST}content-length: -1\r\n\r\n`, [400]],
    ['NUL in a header', `GET /v1/port HTTP/1.1\r\nhost: x\r\nx-a: a\0b\r\n\r\n`, [400]],
    ['a bare CR in a header', `GET /v1/port HTTP/1.1\r\nhost: x\r\nx-a: a\rb\r\n\r\n`, [400]],
    ['a blank before the colon', `GET /v1/port HTTP/1.1\r\nhost : x\r\n\r\n`, [400]],
    ['a folded header', `GET /v1/port HTTP/1.1\r\nhost: x\r\nx-a: a\r\n b\r\n\r\n`, [400, 422]],
    ['no host (RFC 9112, section 3.2)', 'GET /health/live HTTP/1.1\r\n\r\n', [400]],
    ['a method of no name', `FROB /v1/port HTTP/1.1\r\nhost: x\r\n\r\n`, [400, 404, 405]],
    ['HTTP/2 without asking', 'PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n', [400, 505]],
    ['HTTP/0.9, whose head never ends', 'GET /\r\n', [400, 408]],
    ['TLS on a plain port', '\x16\x03\x01\x02\x00\x01\x00\x01\xfc\x03\x03', [400]],
    ['a head of 20 kB', `GET /health/live HTTP/1.1\r\nhost: x\r\nx-a: ${'a'.repeat(20_000)}\r\n\r\n`, [431]],
    ['CONNECT', 'CONNECT example:443 HTTP/1.1\r\nhost: example:443\r\n\r\n', [400, 404, 405]],
    ['TRACE', 'TRACE /v1/port HTTP/1.1\r\nhost: x\r\nconnection: close\r\n\r\n', [404, 405]],
    ['an escape that is none', 'GET /v1/%zz HTTP/1.1\r\nhost: x\r\nconnection: close\r\n\r\n', [400]],
    ['overlong UTF-8', 'GET /v1/%c0%af HTTP/1.1\r\nhost: x\r\nconnection: close\r\n\r\n', [400, 404]],
    ['NUL in the address', 'GET /v1/port%00 HTTP/1.1\r\nhost: x\r\nconnection: close\r\n\r\n', [400, 404]],
    [
      'a path upwards',
      'GET /kiosk/../../etc/passwd HTTP/1.1\r\nhost: x\r\nconnection: close\r\n\r\n',
      [400, 404],
    ],
    [
      'another host as address',
      'GET http://example/v1/nothing HTTP/1.1\r\nhost: x\r\nconnection: close\r\n\r\n',
      [400, 404],
    ],
  ])('%s', async (_name, bytes, allowed) => {
    const { text } = await send(bytes)
    const [first, ...more] = statuses(text)
    // An upgrade of protocol or a CONNECT may also be cut without a word.
    if (first !== undefined) expect(allowed).toContain(first)
    else expect(text).toBe('')
    expect(more).toEqual([])
    expect(text).not.toMatch(/at .*\.(js|ts):\d/)
    await isWell()
  })

  it('two thousand headers', async () => {
    const many = Array.from({ length: 2000 }, (_, i) => `a${i}: b`).join('\r\n')
    const { text } = await send(
      `GET /health/live HTTP/1.1\r\nhost: x\r\nconnection: close\r\n${many}\r\n\r\n`,
    )
    expect([200, 431]).toContain(statuses(text)[0])
  })

  it('a wish for another protocol is passed over', async () => {
    const { text } = await send(
      'GET /health/live HTTP/1.1\r\nhost: x\r\nconnection: upgrade\r\nupgrade: websocket\r\n\r\n',
      800,
    )
    expect(statuses(text).every((status) => status === 200)).toBe(true)
    await isWell()
  })
})

describe('bodies', () => {
  it('a compressed bomb is refused unread', async () => {
    const bomb = gzipSync(Buffer.alloc(50_000_000, ' '))
    const head = `${POST}content-encoding: gzip\r\ncontent-length: ${bomb.length}\r\n\r\n`
    const { text } = await send(Buffer.concat([Buffer.from(head), bomb]))
    expect([400, 413, 415]).toContain(statuses(text)[0])
    await isWell()
  })

  it('a body above the limit is refused with 413 before it has arrived', async () => {
    const { text } = await send(`${POST}content-length: 900000\r\n\r\n${'x'.repeat(1000)}`)
    expect(statuses(text)[0]).toBe(413)
    await isWell()
  })

  it('a body that breaks off costs nothing but its connection', async () => {
    const { socket } = rawConnection(port)
    socket.write(`${POST}content-length: 100\r\n\r\n{"netVolumeL"`)
    await delay(50)
    socket.destroy()
    await isWell()
  })

  it('a client that only waits is told to go on, once', async () => {
    const { socket, answer } = rawConnection(port)
    socket.write(`${POST}expect: 100-continue\r\nconnection: close\r\ncontent-length: ${BODY.length}\r\n\r\n`)
    await delay(100)
    socket.write(BODY)
    expect(statuses((await answer()).text)).toEqual([100, 200])
  })
})

describe('slow clients', () => {
  it.each([
    ['head', 'GET /v1/port HTTP/1.1\r\nhost: x\r\nx-a: '],
    ['body', `${POST}content-length: 5000\r\n\r\n`],
  ])(
    'a %s that drips in is cut off in bounded time, and others are served meanwhile',
    async (_name, start) => {
      const { socket, answer } = rawConnection(port)
      socket.write(start)
      const drip = setInterval(() => socket.write('a'), 100)
      await isWell()
      const began = performance.now()
      const { closed, text } = await answer(8000)
      clearInterval(drip)
      expect(closed).toBe(true)
      expect(performance.now() - began).toBeLessThan(8000)
      expect([undefined, 408]).toContain(statuses(text)[0])
    },
  )

  it('pipelined requests are answered in their order', async () => {
    const ask = (id: string) => `GET /health/live HTTP/1.1\r\nhost: x\r\nx-request-id: ${id}\r\n\r\n`
    const { text } = await send(
      `${ask('a')}${WHOLE}${ask('b')}${ask('c').replace('host: x', 'host: x\r\nconnection: close')}`,
    )
    expect(statuses(text)).toEqual([200, 200, 200, 200])
    expect([...text.matchAll(/x-request-id: (\w)\r/g)].map(([, id]) => id)).toEqual(['a', 'b', 'c'])
  })

  it('three hundred idle connections keep nobody out', async () => {
    const idle = Array.from({ length: 300 }, () => rawConnection(port))
    await isWell()
    for (const { socket } of idle) socket.destroy()
  })
})
