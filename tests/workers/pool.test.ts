import { afterAll, describe, expect, it } from 'vitest'
import { framed } from '../../src/api/answer-frame.ts'
import { shelfPair } from '../../src/api/design-check/example.ts'
import { Refused } from '../../src/api/problem.ts'
import { cutListInBox } from '../../src/core/design/cut-list-in-box.ts'
import { designCheck } from '../../src/core/design/design-check.ts'
import { isRefusal } from '../../src/core/outcome.ts'
import { printedSheet } from '../../src/views/sheet/printed-sheet.ts'
import { workerPool } from '../../src/workers/pool.ts'
import { builtService } from '../built.ts'
import { hardSearch } from '../hard-search.ts'
import { buildApp } from '../held-app.ts'

const service = await builtService()
const workerUrl = new URL('workers/worker.js', service.url)
afterAll(service.remove)

const never = { client: 'one', gone: new AbortController().signal }

describe('heavy work in a thread of its own', () => {
  it('gives what the same work gives here', async () => {
    const pool = workerPool({ workerUrl, threads: 1 })
    const beside = await pool.heavyWork.cutList(hardSearch(0.05), never)
    await pool.close()
    expect(beside).toEqual(cutListInBox(hardSearch(0.05)))
  })

  it('writes the build sheet byte for byte as it is written here', async () => {
    const checked = designCheck(shelfPair)
    if (isRefusal(checked)) throw new Error(JSON.stringify(checked.faults))
    const answer = await framed(checked, { sentence: 'It works.', request: shelfPair, wantsWorking: false })
    const order = { checked: answer, design: shelfPair, origin: 'http://localhost', paper: 'A4' } as const
    const pool = workerPool({ workerUrl, threads: 1 })
    const beside = Buffer.from(await pool.heavyWork.buildSheetPdf(order, never))
    await pool.close()
    expect(beside.subarray(0, 5).toString('latin1')).toBe('%PDF-')
    expect(beside.equals(Buffer.from(await printedSheet(order)))).toBe(true)
  })

  it('is given up when nobody waits for it, and the next work is done all the same', async () => {
    const pool = workerPool({ workerUrl, threads: 1 })
    const gone = new AbortController()
    const given = pool.heavyWork.cutList(hardSearch(30), { client: 'one', gone: gone.signal })
    setTimeout(() => gone.abort(), 300)
    await expect(given).rejects.toThrow(/abort/i)
    await expect(pool.heavyWork.cutList(hardSearch(0), never)).resolves.toHaveProperty('sections')
    await pool.close()
  })

  it('is refused as busy when it takes too long, or when too much is waiting', async () => {
    const slow = workerPool({ workerUrl, threads: 1, longestMs: 300 })
    await expect(slow.heavyWork.cutList(hardSearch(30), never)).rejects.toMatchObject({ problem: 'busy' })
    await slow.close()

    const pool = workerPool({ workerUrl, threads: 1 })
    const all = Array.from({ length: 8 }, () =>
      pool.heavyWork.cutList(hardSearch(30), never).catch((error: unknown) => error),
    )
    const first = await Promise.race(all)
    expect(first).toBeInstanceOf(Refused)
    expect(first).toHaveProperty('problem', 'busy')
    await pool.close()
    await Promise.all(all)
  })

  it('is done for clients in turn: ten long ones of one client do not keep the short one of another waiting', async () => {
    const pool = workerPool({ workerUrl, threads: 1 })
    const order: string[] = []
    const ask = (client: string, seconds: number) =>
      pool.heavyWork
        .cutList(hardSearch(seconds), { client, gone: new AbortController().signal })
        .then(() => order.push(client))
    const greedy = Array.from({ length: 4 }, () => ask('greedy', 0.3))
    const modest = ask('modest', 0)
    expect(pool.load()).toEqual({ running: 1, waiting: 4 })
    await Promise.all([...greedy, modest])
    await pool.close()
    expect(order.indexOf('modest')).toBeLessThanOrEqual(2)
    expect(pool.load()).toEqual({ running: 0, waiting: 0 })
  })

  it('leaves the queue with its client', async () => {
    const pool = workerPool({ workerUrl, threads: 1 })
    const gone = new AbortController()
    const first = pool.heavyWork.cutList(hardSearch(0.3), never)
    const second = pool.heavyWork.cutList(hardSearch(30), { client: 'two', gone: gone.signal })
    gone.abort(new Error('went away'))
    await expect(second).rejects.toThrow('went away')
    expect(pool.load()).toEqual({ running: 1, waiting: 0 })
    await first
    await pool.close()
  })

  it('is refused as busy when other work keeps it waiting for too long', async () => {
    const pool = workerPool({ workerUrl, threads: 1, longestWaitMs: 100 })
    const first = pool.heavyWork.cutList(hardSearch(0.5), never)
    await expect(pool.heavyWork.cutList(hardSearch(0), never)).rejects.toMatchObject({ problem: 'busy' })
    expect(pool.load()).toEqual({ running: 1, waiting: 0 })
    await first
    await pool.close()
  })

  it('answers 503 with the time to wait, and a quick request meanwhile', async () => {
    const pool = workerPool({ workerUrl, threads: 1, longestMs: 1500 })
    const app = await buildApp({ heavyWork: pool.heavyWork })
    const ask = (url: string, payload: object) => app.inject({ method: 'POST', url, payload })
    const order: string[] = []
    const [heavy] = await Promise.all([
      ask('/v1/cut-list', hardSearch(30)).finally(() => order.push('heavy')),
      ask('/v1/port', { netVolumeL: 4, innerDiameterMm: 30, tuningHz: 80 }).finally(() =>
        order.push('quick'),
      ),
    ])
    await app.close()
    await pool.close()
    expect(order).toEqual(['quick', 'heavy'])
    expect(heavy.statusCode).toBe(503)
    expect(heavy.headers['retry-after']).toBe('5')
    expect(heavy.json()).toMatchObject({ type: '/problems/busy', status: 503 })
  })

  it('is refused as busy at the end of the service, begun or waiting or new', async () => {
    const pool = workerPool({ workerUrl, threads: 1 })
    const all = [1, 2].map(() =>
      pool.heavyWork.cutList(hardSearch(30), never).catch((error: unknown) => error),
    )
    expect(pool.load()).toEqual({ running: 1, waiting: 1 })
    expect(pool.giveUp()).toBe(2)
    for (const error of await Promise.all(all)) expect(error).toMatchObject({ problem: 'busy' })
    await expect(pool.heavyWork.cutList(hardSearch(0), never)).rejects.toMatchObject({ problem: 'busy' })
    expect(pool.load()).toEqual({ running: 0, waiting: 0 })
    expect(pool.giveUp()).toBe(0)
    await pool.close()
  })
})
