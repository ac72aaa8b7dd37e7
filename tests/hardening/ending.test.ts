import { setTimeout as delay } from 'node:timers/promises'
import { describe, expect, it } from 'vitest'
import { buildApp } from '../../src/app.ts'
import { shutdown } from '../../src/service/shutdown.ts'
import { rawConnection, statuses } from './raw.ts'

const HELD = 'GET /held HTTP/1.1\r\nhost: x\r\n\r\n'
const LIVE = 'GET /health/live HTTP/1.1\r\nhost: x\r\n\r\n'

/** A service with a route that answers when it is let go, and an end with the given notice. */
async function heldService(noticeMs: number) {
  const { isDraining, drain } = shutdown(noticeMs)
  const app = await buildApp({ isReady: () => !isDraining() })
  const held: (() => void)[] = []
  app.get('/held', { schema: { hide: true } }, () => new Promise((go) => held.push(() => go({ held: true }))))
  const port = Number(new URL(await app.listen({ host: '127.0.0.1', port: 0 })).port)
  return { app, port, drain, begun: () => held.length, letGo: () => held.pop()?.() }
}

const until = async (isSo: () => boolean) => {
  while (!isSo()) await delay(5)
}

describe('the end of a service with connections that are kept', () => {
  it('answers what was begun, says that the connection ends, and does not wait for its client to leave', async () => {
    const service = await heldService(0)
    const { socket, answer } = rawConnection(service.port)
    socket.write(HELD)
    await until(() => service.begun() === 1)
    const ended = service.drain(service.app, 5)
    await delay(50)
    service.letGo()
    expect(await ended).toBe(true)
    const { text, closed } = await answer()
    expect(statuses(text)).toEqual([200])
    expect(text).toMatch(/^connection: close\r$/im)
    expect(text).toContain('{"held":true}')
    expect(closed).toBe(true)
  })

  it('takes requests on them while others still hear that it is not ready, and then closes each', async () => {
    const service = await heldService(300)
    const { socket, answer } = rawConnection(service.port)
    socket.write(LIVE)
    await delay(50)
    const ended = service.drain(service.app, 5)
    socket.write(LIVE)
    const { text, closed } = await answer()
    expect(statuses(text)).toEqual([200, 200])
    expect([...text.matchAll(/^connection: (.*)\r$/gim)].map(([, word]) => word)).toEqual([
      'keep-alive',
      'close',
    ])
    expect(closed).toBe(true)
    expect(await ended).toBe(true)
  })
})

describe('the end of a service that is busy with something long', () => {
  it('does not count that time as notice, and answers what came meanwhile', async () => {
    const service = await heldService(200)
    const { socket, answer } = rawConnection(service.port)
    socket.write(LIVE)
    await delay(50)
    const ended = service.drain(service.app, 5)
    socket.write(LIVE)
    for (const until = performance.now() + 400; performance.now() < until; );
    expect(statuses((await answer()).text)).toEqual([200, 200])
    expect(await ended).toBe(true)
  })
})

describe('work that takes longer than a request may take to arrive', () => {
  it('is answered all the same', async () => {
    const app = await buildApp({ requestTimeoutMs: 200 })
    app.get('/long', { schema: { hide: true } }, () => delay(700, { done: true }))
    const { port } = new URL(await app.listen({ host: '127.0.0.1', port: 0 }))
    const { socket, answer } = rawConnection(Number(port))
    socket.write('GET /long HTTP/1.1\r\nhost: x\r\nconnection: close\r\n\r\n')
    expect(statuses((await answer()).text)).toEqual([200])
    await app.close()
  })
})
