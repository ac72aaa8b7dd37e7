import { setTimeout as delay } from 'node:timers/promises'
import { describe, expect, it } from 'vitest'
import { port } from '../../src/core/box/port.ts'
import { isRefusal } from '../../src/core/outcome.ts'
import { startInstances } from './instances.ts'
import { hasNginx, startNginx } from './nginx-before.ts'

const CLIENTS = 8
const PAUSE_MS = 100
const MOST_TRIES = 20

interface Tally {
  asked: number
  /** Answers that say "busy, come again", which a starved machine may give at any time; the client then comes again. */
  refused: number
  lost: string[]
}

/** One request, again while the answer is "busy", until it is answered with its own value. */
async function ask(address: string, tally: Tally): Promise<void> {
  const body = { netVolumeL: 2 + (tally.asked++ % 500) / 250, innerDiameterMm: 26, tuningHz: 105 }
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    const response = await fetch(`${address}/v1/port`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    })
    const text = await response.text()
    if (response.status !== 503) {
      if (response.status !== 200 || !isOwn(body, text)) tally.lost.push(`${response.status}: ${text}`)
      return
    }
    expect(JSON.parse(text).type).toBe('/problems/busy')
    expect(response.headers.get('retry-after')).toMatch(/^\d+$/)
    tally.refused++
    await delay(PAUSE_MS)
  }
  tally.lost.push('busy for too long')
}

/** Whether the answer is the one to this body: computed here as well. */
function isOwn(body: Parameters<typeof port>[0], text: string): boolean {
  const computed = port(body)
  const answer: { port: { lengthMm: number | null } } = JSON.parse(text)
  return !isRefusal(computed) && answer.port.lengthMm === computed.sections.port.lengthMm
}

/** Clients that ask one request after the other until the end of what happens meanwhile, which counts requests, not time. */
async function load(
  address: string,
  meanwhile: (asked: (count: number) => Promise<void>) => Promise<void>,
): Promise<Tally> {
  let running = true
  const tally: Tally = { asked: 0, refused: 0, lost: [] }
  const client = async () => {
    while (running) await ask(address, tally).catch((error: unknown) => tally.lost.push(String(error)))
  }
  const clients = Promise.all(Array.from({ length: CLIENTS }, client))
  const asked = async (count: number) => {
    while (tally.asked < count) await delay(10)
  }
  await meanwhile(asked).finally(() => {
    running = false
  })
  await clients
  return tally
}

/** Three instances: one is killed under load, one is asked to go, one is left. */
async function withTwoGone(change: Parameters<typeof startNginx>[1] = []) {
  const { instances, end } = await startInstances(3)
  const nginx = await startNginx(
    instances.map(({ address }) => address),
    change,
  )
  try {
    return await load(nginx.address, async (asked) => {
      await asked(100)
      await instances[0]?.end('SIGKILL')
      await asked(200)
      await instances[1]?.end('SIGTERM')
      await asked(400)
    })
  } finally {
    await nginx.end()
    await end()
  }
}

describe.skipIf(!hasNginx)('three instances behind nginx, under load', () => {
  it('lose no request when one is killed and another is asked to go', async () => {
    const { asked, refused, lost } = await withTwoGone()
    expect(lost).toEqual([])
    expect(refused / asked).toBeLessThan(0.1)
  })

  it('would lose some, did nginx not put them to another instance', async () => {
    const handedOn = 'proxy_next_upstream error timeout non_idempotent;'
    const { refused } = await withTwoGone([[handedOn, 'proxy_next_upstream off;']])
    expect(refused).toBeGreaterThan(0)
  })
})
