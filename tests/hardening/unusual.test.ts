import { setTimeout as delay } from 'node:timers/promises'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { buildApp } from '../../src/app.ts'
import { rawConnection, statuses } from './raw.ts'

const app = await buildApp()
let port = 0
beforeAll(async () => {
  port = Number(new URL(await app.listen({ host: '127.0.0.1', port: 0 })).port)
})
afterAll(() => app.close())

const QUERY = '/v1/port?netVolumeL=4&innerDiameterMm=30&tuningHz=80&pick=port.tuningHz'
const BODY = '{"netVolumeL":4,"innerDiameterMm":30,"tuningHz":80}'
const HEAD = 'POST /v1/port HTTP/1.1\r\nhost: x\r\nconnection: close\r\ncontent-type: application/json\r\n'

async function send(parts: readonly string[], pauseMs = 0) {
  const { socket, answer } = rawConnection(port)
  socket.setNoDelay(true)
  for (const part of parts) {
    socket.write(part)
    if (pauseMs > 0) await delay(pauseMs)
  }
  return (await answer(8000)).text
}

/** RFC 9112 (HTTP/1.1) gives each of these forms. */
describe('what is unusual but right is answered', () => {
  it.each([
    ['HTTP/1.0, without a host (section 2.3)', `GET ${QUERY} HTTP/1.0\r\n\r\n`],
    [
      'the whole address in the first line (section 3.2.2)',
      `GET http://x${QUERY} HTTP/1.1\r\nhost: x\r\nconnection: close\r\n\r\n`,
    ],
    [
      'empty lines before the request (section 2.2)',
      `\r\n\r\nGET ${QUERY} HTTP/1.1\r\nhost: x\r\nconnection: close\r\n\r\n`,
    ],
    [
      'names of headers in capitals, values with blanks around (section 5)',
      `GET ${QUERY} HTTP/1.1\r\nHOST:x  \r\nCoNNeCTion: \t close\r\n\r\n`,
    ],
    [
      'an escaped letter in the path (RFC 3986, section 2.3)',
      `GET ${QUERY.replace('port?', '%70ort?')} HTTP/1.1\r\nhost: x\r\nconnection: close\r\n\r\n`,
    ],
    [
      'a wish for HTTP/2 that need not be granted (RFC 9110, section 7.8)',
      `GET ${QUERY} HTTP/1.1\r\nhost: x\r\nconnection: close, upgrade, http2-settings\r\nupgrade: h2c\r\nhttp2-settings: AAMAAABkAAQAAP__\r\n\r\n`,
    ],
    [
      'an expectation that nobody knows (RFC 9110, section 10.1.1)',
      `GET ${QUERY} HTTP/1.1\r\nhost: x\r\nconnection: close\r\nexpect: rain\r\n\r\n`,
    ],
  ])('%s', async (_name, bytes) => {
    const text = await send([bytes])
    expect(statuses(text)).toEqual([200])
    expect(text).toMatch(/\r\n\r\n80$/)
  })

  it('a body in chunks with extensions and a trailer (section 7.1)', async () => {
    const size = BODY.length.toString(16)
    const chunks = `${size};a=b;c\r\n${BODY}\r\n0\r\nx-checked: yes\r\n\r\n`
    expect(statuses(await send([`${HEAD}transfer-encoding: chunked\r\n\r\n${chunks}`]))).toEqual([200])
  })

  it('a request that comes letter by letter', async () => {
    const letters = [...`${HEAD}content-length: ${BODY.length}\r\n\r\n${BODY}`]
    expect(statuses(await send(letters, 1))).toEqual([200])
  })
})

it('a request of HTTP/1.1 that names no host is refused in words (RFC 9112, section 3.2)', async () => {
  const text = await send([`GET ${QUERY} HTTP/1.1\r\nconnection: close\r\n\r\n`])
  expect(statuses(text)).toEqual([400])
  expect(text).toContain('The Host header is missing.')
})

describe('a request that names two hosts', () => {
  it.each([
    ['that differ', 'host: x\r\nHost: y'],
    ['that are the same', 'host: x\r\nHOST: x'],
  ])('%s is refused (RFC 9112, section 3.2)', async (_name, hosts) => {
    const text = await send([`GET ${QUERY} HTTP/1.1\r\n${hosts}\r\nconnection: close\r\n\r\n`])
    expect(statuses(text)).toEqual([400])
    expect(text).toContain('/problems/not-readable')
  })
})
