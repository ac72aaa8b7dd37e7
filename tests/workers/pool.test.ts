import { afterAll, describe, expect, it } from 'vitest'
import { Refused } from '../../src/api/problem.ts'
import { cutListInBox } from '../../src/core/design/cut-list-in-box.ts'
import type { CutListRequest } from '../../src/schema/cut-list.ts'
import { workerPool } from '../../src/workers/pool.ts'
import { builtService } from '../built.ts'
import { buildApp } from '../held-app.ts'

const service = await builtService()
const workerUrl = new URL('workers/worker.js', service.url)
afterAll(service.remove)

/** Eleven sizes that fill boards badly: enough to keep the search busy for as long as it may. */
const request = (seconds: number): CutListRequest => ({
  parts: Array.from({ length: 11 }, (_, i) => ({
    id: `p${i}`,
    lengthMm: 211 + 37 * ((i * 7) % 11),
    widthMm: 97 + 29 * ((i * 5) % 11),
    count: 6,
  })),
  stock: [{ id: 'board', lengthMm: 1220, widthMm: 610, count: 40 }],
  effort: { seconds },
})

const never = new AbortController().signal

describe('heavy work in a thread of its own', () => {
  it('gives what the same work gives here', async () => {
    const pool = workerPool({ workerUrl, threads: 1 })
    const beside = await pool.heavyWork.cutList(request(0.05), never)
    await pool.close()
    expect(beside).toEqual(cutListInBox(request(0.05)))
  })

  it('is given up when nobody waits for it, and the next work is done all the same', async () => {
    const pool = workerPool({ workerUrl, threads: 1 })
    const gone = new AbortController()
    const given = pool.heavyWork.cutList(request(30), gone.signal)
    setTimeout(() => gone.abort(), 300)
    await expect(given).rejects.toThrow(/abort/i)
    await expect(pool.heavyWork.cutList(request(0), never)).resolves.toHaveProperty('sections')
    await pool.close()
  })

  it('is refused as busy when it takes too long, or when too much is waiting', async () => {
    const slow = workerPool({ workerUrl, threads: 1, longestMs: 300 })
    await expect(slow.heavyWork.cutList(request(30), never)).rejects.toMatchObject({ problem: 'busy' })
    await slow.close()

    const pool = workerPool({ workerUrl, threads: 1 })
    const all = Array.from({ length: 8 }, () =>
      pool.heavyWork.cutList(request(30), never).catch((error: unknown) => error),
    )
    const first = await Promise.race(all)
    expect(first).toBeInstanceOf(Refused)
    expect(first).toHaveProperty('problem', 'busy')
    await pool.close()
    await Promise.all(all)
  })

  it('answers 503 with the time to wait, and a quick request meanwhile', async () => {
    const pool = workerPool({ workerUrl, threads: 1, longestMs: 1500 })
    const app = await buildApp({ heavyWork: pool.heavyWork })
    const ask = (url: string, payload: object) => app.inject({ method: 'POST', url, payload })
    const order: string[] = []
    const [heavy] = await Promise.all([
      ask('/v1/cut-list', request(30)).finally(() => order.push('heavy')),
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
})
