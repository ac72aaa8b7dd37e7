import { setTimeout as delay } from 'node:timers/promises'
import { describe, expect, it } from 'vitest'
import { port } from '../../src/core/box/port.ts'
import { isRefusal } from '../../src/core/outcome.ts'
import { startInstances } from './instances.ts'
import { hasNginx, startNginx } from './nginx-before.ts'

const CLIENTS = 8

/** What went wrong with one request; undefined when it was answered with its own value. */
async function lostAt(address: string, number: number): Promise<string | undefined> {
  const body = { netVolumeL: 2 + (number % 500) / 250, innerDiameterMm: 26, tuningHz: 105 }
  try {
    const response = await fetch(`${address}/v1/port`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    })
    if (response.status !== 200) return `${response.status}`
    const computed = port(body)
    const lengthMm = isRefusal(computed) ? undefined : computed.sections.port.lengthMm
    const answer: { port: { lengthMm: number | null } } = JSON.parse(await response.text())
    return answer.port.lengthMm === lengthMm ? undefined : 'the answer of another request'
  } catch (error) {
    return String(error)
  }
}

/** Clients that ask one request after the other until the end of what happens meanwhile. */
async function load(address: string, meanwhile: () => Promise<void>) {
  let running = true
  let asked = 0
  const lost: string[] = []
  const client = async () => {
    while (running) {
      const fault = await lostAt(address, asked++)
      if (fault !== undefined) lost.push(fault)
    }
  }
  const clients = Promise.all(Array.from({ length: CLIENTS }, client))
  await meanwhile().finally(() => {
    running = false
  })
  await clients
  return { asked, lost }
}

/** Three instances: one is killed under load, one is asked to go, one is left. */
async function withTwoGone(change: Parameters<typeof startNginx>[1] = []) {
  const { instances, end } = await startInstances(3)
  const nginx = await startNginx(
    instances.map(({ address }) => address),
    change,
  )
  try {
    return await load(nginx.address, async () => {
      await delay(700)
      await instances[0]?.end('SIGKILL')
      await delay(700)
      await instances[1]?.end('SIGTERM')
      await delay(700)
    })
  } finally {
    await nginx.end()
    await end()
  }
}

describe.skipIf(!hasNginx)('three instances behind nginx, under load', () => {
  it('lose no request when one is killed and another is asked to go', async () => {
    const { asked, lost } = await withTwoGone()
    expect(lost).toEqual([])
    expect(asked).toBeGreaterThan(100)
  })

  it('would lose some, did nginx not put them to another instance', async () => {
    const handedOn = 'proxy_next_upstream error timeout http_502 http_503 non_idempotent;'
    const { lost } = await withTwoGone([[handedOn, 'proxy_next_upstream off;']])
    expect(lost).toContain('502')
  })
})
