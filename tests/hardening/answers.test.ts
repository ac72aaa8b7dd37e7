import { setTimeout as delay } from 'node:timers/promises'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { buildApp } from '../../src/app.ts'
import { rawConnection, statuses } from './raw.ts'

const service = await buildApp({ requestTimeoutMs: 700 })
const place = { port: 0 }
beforeAll(async () => {
  place.port = Number(new URL(await service.listen({ host: '127.0.0.1', port: 0 })).port)
})
afterAll(() => service.close())

async function sent(...parts: (string | number)[]) {
  const { socket, answer } = rawConnection(place.port)
  for (const part of parts) {
    if (typeof part === 'number') await delay(part)
    else socket.write(part)
  }
  return (await answer()).text
}

/** As README and contract promise: an error is a problem document (RFC 9457), wherever it was found. */
describe('what is refused before any route is reached is a problem like any other', () => {
  it.each([
    ['by the parser', 'GET / HTTP/1.1\r\nhost: x\r\nbroken header\r\n\r\n', 400],
    ['by its size', `GET / HTTP/1.1\r\nhost: x\r\nlong: ${'x'.repeat(20_000)}\r\n\r\n`, 431],
    ['by an address of no character', 'GET /%ff HTTP/1.1\r\nhost: x\r\nconnection: close\r\n\r\n', 400],
    [
      'by an address that is no URI',
      'GET http://[::1/ HTTP/1.1\r\nhost: x\r\nconnection: close\r\n\r\n',
      400,
    ],
    [
      'by time',
      'POST /v1/port HTTP/1.1\r\nhost: x\r\ncontent-type: application/json\r\ncontent-length: 9\r\n\r\n{',
      408,
    ],
  ])('%s', async (_name, bytes, status) => {
    const text = await sent(bytes)
    expect(statuses(text)).toEqual([status])
    expect(text).toMatch(/^content-type: application\/problem\+json/im)
    expect(text).toMatch(/^x-content-type-options: nosniff\r$/im)
    const id = /^x-request-id: (\S+)\r$/im.exec(text)?.[1]
    const problem = JSON.parse(text.slice(text.indexOf('\r\n\r\n')))
    expect(problem).toMatchObject({ status, instance: `urn:uuid:${id}` })
  })

  it('says nothing of an escape where there is none', async () => {
    expect(await sent('GET http://[::1/ HTTP/1.1\r\nhost: x\r\nconnection: close\r\n\r\n')).not.toContain('%')
  })
})

describe('a request that has been answered', () => {
  it('is not answered again when the rest of its body never comes', async () => {
    const head = 'POST /v1/port HTTP/1.1\r\nhost: x\r\ncontent-type: application/json\r\n'
    expect(statuses(await sent(`${head}content-length: 900000\r\n\r\n{`))).toEqual([413])
  })
})

describe('names that mean something to a language, not to a box', () => {
  const asked = (query: string) =>
    service.inject(`/v1/port?netVolumeL=4&innerDiameterMm=30&tuningHz=80&${query}`)

  it.each([
    '__proto__.x=1',
    'constructor.prototype.x=1',
    'toString=1',
    'ends.__proto__.x=1',
    'tubes.__proto__=1',
  ])('in a query, %s', async (query) => {
    expect((await asked(query)).statusCode).toBe(422)
    expect(Reflect.get({}, 'x')).toBeUndefined()
  })

  it('in ?pick=', async () => {
    for (const path of ['__proto__', 'constructor.name', 'findings.length', 'port.toString'])
      expect((await asked(`pick=${path}`)).statusCode, path).toBe(422)
  })

  it('numbers that are none are refused where they stand', async () => {
    const { statusCode, body } = await service.inject({
      method: 'POST',
      url: '/v1/port',
      payload: '{"netVolumeL":1e999,"innerDiameterMm":-1e999,"tuningHz":"\\ud800"}',
      headers: { 'content-type': 'application/json' },
    })
    expect(statusCode).toBe(422)
    const { errors } = JSON.parse(body)
    expect(errors.map(({ at }: { at: string }) => at)).toEqual([
      '/innerDiameterMm',
      '/netVolumeL',
      '/tuningHz',
    ])
  })
})
