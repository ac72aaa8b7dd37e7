import { writeFile } from 'node:fs/promises'
import { setTimeout as delay } from 'node:timers/promises'
import { fileURLToPath } from 'node:url'
import { afterAll, describe, expect, it } from 'vitest'
import { workerPool } from '../../src/workers/pool.ts'
import { builtService } from '../built.ts'
import { hardSearch } from '../hard-search.ts'
import { buildApp } from '../held-app.ts'
import { startInstances } from '../operations/instances.ts'

const CLIENTS = 6
const ask = (address: string, tuningHz: number) =>
  fetch(`${address}/v1/port?netVolumeL=4&innerDiameterMm=30&tuningHz=${tuningHz}&pick=port.tuningHz`)

/** Clients that ask one thing after the other while something happens; every answer has to be their own. */
async function underLoad(
  once: (number: number) => Promise<string>,
  meanwhile: (more: (count: number) => Promise<void>) => Promise<void>,
) {
  let running = true
  let asked = 0
  const wrong: string[] = []
  const client = async () => {
    while (running) {
      const tuningHz = 60 + (asked++ % 40)
      const got = await once(tuningHz).catch(String)
      if (Number(got) !== tuningHz) wrong.push(got)
    }
  }
  const clients = Promise.all(Array.from({ length: CLIENTS }, client))
  const more = async (count: number) => {
    for (const until = asked + count; asked < until; ) await delay(20)
  }
  await meanwhile(more).finally(() => {
    running = false
  })
  await clients
  return { asked, wrong }
}

describe('a process that is killed under load', () => {
  it('loses no answer of a client that asks again, elsewhere', async () => {
    const { instances, end } = await startInstances(2)
    const addresses = instances.map(({ address }) => address)
    const persistent = async (tuningHz: number) => {
      for (let tries = 0; tries < 10; tries += 1) {
        const response = await ask(addresses[tries % 2] ?? '', tuningHz).catch(() => undefined)
        const text = await response?.text().catch(() => undefined)
        if (response?.status === 200 && text !== undefined) return text
      }
      return 'given up'
    }
    const { asked, wrong } = await underLoad(persistent, async (more) => {
      await more(40)
      await instances[0]?.end('SIGKILL')
      await more(40)
    })
    await end()
    expect(wrong).toEqual([])
    expect(asked).toBeGreaterThanOrEqual(80)
  })

  it('asked to end, answers all that it has taken: a long search, and rows that stream', async () => {
    const { instances, end } = await startInstances(1)
    const address = instances[0]?.address ?? ''
    const rows = Array.from({ length: 3000 }, (_, i) => `4,30,${60 + (i % 40)}`)
    const batch = fetch(`${address}/v1/port`, {
      method: 'POST',
      headers: { 'content-type': 'text/csv' },
      body: ['netVolumeL,innerDiameterMm,tuningHz', ...rows].join('\n'),
    }).then((response) => response.text())
    const search = fetch(`${address}/v1/cut-list`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(hardSearch(1)),
    }).then((response) => response.status)
    await delay(150)
    await instances[0]?.end('SIGTERM')
    expect(await search).toBe(200)
    expect((await batch).trim().split('\r\n')).toHaveLength(3001)
    await end()
  })
})

describe('a process whose time to end is over', () => {
  it('refuses the work that is left, with the time to wait, and says so in its log', async () => {
    const { instances, end } = await startInstances(1, { SHUTDOWN_SECONDS: '0' })
    const address = instances[0]?.address ?? ''
    const searches = [29, 30].map((seconds) =>
      fetch(`${address}/v1/cut-list`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(hardSearch(seconds)),
      }),
    )
    await delay(500)
    await instances[0]?.end('SIGTERM')
    for (const response of await Promise.all(searches)) {
      expect(response.status).toBe(503)
      expect(Number(response.headers.get('retry-after'))).toBeGreaterThan(0)
      expect(await response.json()).toMatchObject({ type: '/problems/busy' })
    }
    expect(instances[0]?.said()).toContain('"pieces":2')
    await end()
  })
})

describe('a worker thread that dies', async () => {
  const built = await builtService()
  afterAll(built.remove)

  it('makes a 500 of its own request, and the next one works', async () => {
    // A worker that ends its thread when asked for a board of this name, and else does its work.
    const worker = new URL('workers/dying.js', built.url)
    await writeFile(
      fileURLToPath(worker),
      `import { cutList as work } from './worker.js'
export function cutList(body) {
  if (body.stock[0].id === 'poison') process.exit(3)
  return work(body)
}`,
    )
    const pool = workerPool({ workerUrl: worker, threads: 1 })
    const app = await buildApp({ heavyWork: pool.heavyWork })
    const { stock, ...rest } = hardSearch(0.05)
    const post = (id: string) =>
      app.inject({
        method: 'POST',
        url: '/v1/cut-list',
        payload: { ...rest, stock: stock.map((board) => ({ ...board, id })) },
      })
    const died = await post('poison')
    expect(died.statusCode).toBe(500)
    expect(died.json()).toMatchObject({ type: '/problems/our-fault', status: 500 })
    expect((await post('board')).statusCode).toBe(200)
    await app.close()
    await pool.close()
  })
})
