import { setTimeout as delay } from 'node:timers/promises'
import { request } from 'undici'
import { describe, expect, it } from 'vitest'
import { type Instance, startInstances } from '../operations/instances.ts'

const CLIENTS = 6
const LOOK_MS = 50

/** The least that stands before several instances: it asks each whether it is ready, and never asks a request twice. */
function balancerOver(started: readonly Instance[]) {
  const ready = new Set(started.map(({ address }) => address))
  let turn = 0
  const looks = new Set<string>()
  const look = async (address: string) => {
    looks.add(address)
    while (looks.has(address)) {
      const isReady = await request(`${address}/health/ready`)
        .then(async ({ statusCode, body }) => {
          await body.dump()
          return statusCode === 200
        })
        .catch(() => false)
      if (isReady) ready.add(address)
      else ready.delete(address)
      await delay(LOOK_MS)
    }
  }
  for (const { address } of started) void look(address)
  return {
    choose: () => [...ready][turn++ % ready.size] ?? 'http://127.0.0.1:9',
    add: ({ address }: Instance) => void look(address),
    isReady: (instance: Instance) => ready.has(instance.address),
    end: () => looks.clear(),
  }
}

/** Asks for one value; false when the machine had too much to do for it, which is no loss. */
async function ask(address: string, tuningHz: number): Promise<boolean> {
  const url = `${address}/v1/port?netVolumeL=4&innerDiameterMm=30&tuningHz=${tuningHz}&pick=port.tuningHz`
  const { statusCode, body } = await request(url)
  const text = await body.text()
  if (statusCode === 503 && text.includes('/problems/busy')) return false
  if (statusCode !== 200 || Number(text) !== tuningHz) throw new Error(`${statusCode}: ${text}`)
  return true
}

/** Clients that go on asking while something happens; what was not answered, and how many were. */
async function underLoad(once: (tuningHz: number) => Promise<boolean>) {
  const tally: { answered: number; lost: string[]; running: boolean } = {
    answered: 0,
    lost: [],
    running: true,
  }
  const client = async (number: number) => {
    while (tally.running) {
      const isAnswered = await once(60 + ((number + tally.answered) % 40)).catch(String)
      if (isAnswered === true) tally.answered += 1
      else await delay(20)
      if (typeof isAnswered === 'string') tally.lost.push(isAnswered)
    }
  }
  const clients = Promise.all(Array.from({ length: CLIENTS }, (_, number) => client(number)))
  return {
    more: async (count: number) => {
      for (const until = tally.answered + count; tally.answered < until; ) await delay(20)
    },
    end: async () => {
      tally.running = false
      await clients
      return tally
    },
  }
}

describe('instances that are replaced under load', () => {
  it('one after the other by SIGTERM lose nothing, though nobody asks twice', async () => {
    const { instances, start, end } = await startInstances(2)
    const balancer = balancerOver(instances)
    const load = await underLoad((tuningHz) => ask(balancer.choose(), tuningHz))
    for (const old of [...instances]) {
      await load.more(30)
      const next = await start()
      balancer.add(next)
      while (!balancer.isReady(next)) await delay(10)
      await old.end('SIGTERM')
    }
    await load.more(30)
    const { answered, lost } = await load.end()
    balancer.end()
    await end()
    expect(lost).toEqual([])
    expect(answered).toBeGreaterThanOrEqual(90)
  })

  it('by SIGKILL and a start anew lose nothing of clients that ask again', async () => {
    const { instances, start, end } = await startInstances(2)
    const balancer = balancerOver(instances)
    const insistent = async (tuningHz: number) => {
      for (let tries = 0; tries < 50; tries += 1) {
        if (await ask(balancer.choose(), tuningHz).catch(() => false)) return true
        await delay(20)
      }
      throw new Error('asked fifty times')
    }
    const load = await underLoad(insistent)
    for (const old of [...instances]) {
      await load.more(30)
      await old.end('SIGKILL')
      const next = await start()
      balancer.add(next)
      while (!balancer.isReady(next)) await delay(10)
    }
    await load.more(30)
    const { answered, lost } = await load.end()
    balancer.end()
    await end()
    expect(lost).toEqual([])
    expect(answered).toBeGreaterThanOrEqual(90)
  })
})
