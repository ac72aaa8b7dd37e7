import { createServer } from 'node:http'
import { setTimeout as delay } from 'node:timers/promises'
import { afterAll, expect, it } from 'vitest'
import { ask, askFor } from '../../src/kiosk/browser/ask.ts'

const PATIENCE_MS = 300
const STEP_MS = 100
const ANSWER = JSON.stringify({ answer: 'The box holds 3 L.', findings: [] })

/** A network that brings one letter at a time, stops half-way, or brings nothing at all. */
const server = createServer(async (request, reply) => {
  request.resume()
  if (request.url === '/nothing') return
  if (request.url === '/tomorrow') {
    reply.writeHead(429, { 'retry-after': '86400' }).end()
    return
  }
  if (request.url === '/like-it') {
    reply
      .writeHead(200, { 'content-type': 'application/json', 'x-request-id': 'one' })
      .end('{"answer":"Welcome to this network."}')
    return
  }
  reply.writeHead(200, { 'content-type': 'application/json', 'x-request-id': 'one' })
  const parts = ANSWER.match(/.{1,4}/g) ?? []
  for (const part of request.url === '/half' ? parts.slice(0, 3) : parts) {
    reply.write(part)
    await delay(STEP_MS)
  }
  if (request.url === '/slow') reply.end()
})
const address = await new Promise<string>((done) =>
  server.listen(0, '127.0.0.1', () => {
    const at = server.address()
    done(`http://127.0.0.1:${typeof at === 'object' ? at?.port : ''}`)
  }),
)
afterAll(() => {
  server.closeAllConnections()
  server.close()
})

const never = new AbortController().signal

it('waits for an answer that comes slowly, however long in all', async () => {
  const from = performance.now()
  expect(await ask(`${address}/slow`, {}, never, PATIENCE_MS)).toEqual({ answer: JSON.parse(ANSWER) })
  expect(performance.now() - from).toBeGreaterThan(2 * PATIENCE_MS)
})

it.each(['/nothing', '/half'])(
  'takes %s for a service that is away, and a picture may come yet',
  async (path) => {
    const reply = await ask(`${address}${path}`, {}, never, PATIENCE_MS)
    expect(reply).toEqual({ away: 'The service does not answer.', retryAfterS: expect.any(Number) })
    expect(await askFor(`${address}${path}`, {}, never, PATIENCE_MS)).toBe('away')
  },
)

it('asks again within a minute, whatever the answer says', async () => {
  expect(await ask(`${address}/tomorrow`, {}, never)).toEqual({
    away: 'The service is busy.',
    retryAfterS: 60,
  })
})

it('takes nothing for an answer that has not what every answer of ours has', async () => {
  expect(await ask(`${address}/like-it`, {}, never)).toMatchObject({ away: 'The service failed (200).' })
})

it('throws what the page itself gave as reason to stop, before and while it waits', async () => {
  await expect(ask(`${address}/slow`, {}, AbortSignal.abort('Stopped.'))).rejects.toBe('Stopped.')
  const stopping = new AbortController()
  const asked = ask(`${address}/nothing`, {}, stopping.signal)
  setTimeout(() => stopping.abort('Stopped.'), STEP_MS)
  await expect(asked).rejects.toBe('Stopped.')
})
