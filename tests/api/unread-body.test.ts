import { once } from 'node:events'
import { connect } from 'node:net'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { buildApp } from '../held-app.ts'

const MB = 1024 * 1024

const app = await buildApp()
let port = 0
beforeAll(async () => {
  port = Number(new URL(await app.listen({ host: '127.0.0.1', port: 0 })).port)
})
afterAll(() => app.close())

/** A client that looks at nothing before it has sent everything, as many simple ones do. */
async function sendAllThenRead(head: string[], body: Buffer): Promise<string> {
  const socket = connect(port, '127.0.0.1')
  socket.pause()
  await new Promise<void>((sent, failed) => {
    socket.once('error', failed)
    socket.write(`${head.join('\r\n')}\r\n\r\n`)
    socket.write(body, (error) => (error ? failed(error) : sent()))
  })
  const parts: Buffer[] = []
  socket.on('data', (part) => parts.push(part)).resume()
  await once(socket, 'close')
  return Buffer.concat(parts).toString()
}

const head = (path: string, type: string, length: number, connection: string) => [
  `POST ${path} HTTP/1.1`,
  'host: bench',
  `content-type: ${type}`,
  `content-length: ${length}`,
  `connection: ${connection}`,
]

describe('a client that sends its whole body before it reads', () => {
  it.each([
    ['10 MB of JSON', '/v1/port', 'application/json', 10 * MB, 'close', 413],
    ['10 MB of JSON to be kept alive', '/v1/port', 'application/json', 10 * MB, 'keep-alive', 413],
    ['5 MB of plain text', '/v1/port', 'text/plain', 5 * MB, 'close', 415],
    ['5 MB to nowhere', '/v1/nowhere', 'text/plain', 5 * MB, 'close', 404],
  ])('%s: gets the problem', async (_name, path, type, length, connection, status) => {
    const answer = await sendAllThenRead(head(path, type, length, connection), Buffer.alloc(length, 'x'))
    expect(answer).toMatch(new RegExp(`^HTTP/1\\.1 ${status} `))
    expect(JSON.parse(answer.slice(answer.indexOf('\r\n\r\n')))).toMatchObject({ status })
  })

  it('gets it of a body in chunks too', async () => {
    const chunk = `${MB.toString(16)}\r\n${'x'.repeat(MB)}\r\n`
    const [start = '', ...lines] = head('/v1/port', 'application/json', 0, 'close')
    const headers = lines.map((line) =>
      line.startsWith('content-length') ? 'transfer-encoding: chunked' : line,
    )
    const answer = await sendAllThenRead([start, ...headers], Buffer.from(`${chunk.repeat(6)}0\r\n\r\n`))
    expect(answer).toMatch(/^HTTP\/1\.1 413 /)
  })

  it('is not waited for where nothing is under the address, or not by this method', async () => {
    for (const [path, status] of [
      ['/v1/nowhere', 404],
      ['/openapi.json', 405],
    ] as const) {
      const socket = connect(port, '127.0.0.1')
      socket.write(`${head(path, 'application/json', MB, 'close').join('\r\n')}\r\n\r\n{"half":`)
      const [first] = await once(socket, 'data')
      socket.destroy()
      expect(String(first)).toMatch(new RegExp(`^HTTP/1\\.1 ${status} `))
    }
  })

  it('is not listened to for ever', async () => {
    const length = 64 * MB
    const outcome = await sendAllThenRead(
      head('/v1/port', 'application/json', length, 'close'),
      Buffer.alloc(length, 'x'),
    ).catch((error: NodeJS.ErrnoException) => error.code)
    expect(outcome).toMatch(/^(?:HTTP\/1\.1 413 |EPIPE|ECONNRESET)/)
    expect((await app.inject('/health/live')).statusCode).toBe(200)
  })
})
