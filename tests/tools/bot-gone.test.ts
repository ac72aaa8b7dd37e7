import { setTimeout as delay } from 'node:timers/promises'
import { setFlagsFromString } from 'node:v8'
import { runInNewContext } from 'node:vm'
import { afterAll, expect, it } from 'vitest'
import { buildApp } from '../../src/app.ts'
import { workerPool } from '../../src/workers/pool.ts'
import { builtService } from '../built.ts'
import { hardSearch } from '../hard-search.ts'

setFlagsFromString('--expose-gc')
const collect: () => void = runInNewContext('gc')

const built = await builtService()
const pool = workerPool({ workerUrl: new URL('workers/worker.js', built.url), threads: 1 })
const app = await buildApp({ heavyWork: pool.heavyWork })
const address = await app.listen({ host: '127.0.0.1', port: 0 })
afterAll(async () => {
  await app.close()
  await pool.close()
  await built.remove()
})

const call = (seconds: number, signal: AbortSignal) =>
  fetch(`${address}/mcp`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', accept: 'application/json, text/event-stream' },
    body: JSON.stringify({
      jsonrpc: '2.0',
      id: 1,
      method: 'tools/call',
      params: { name: 'cutList', arguments: hardSearch(seconds) },
    }),
    signal,
  })

async function until(isSo: () => boolean): Promise<void> {
  for (const end = performance.now() + 5000; !isSo() && performance.now() < end; ) await delay(20)
}

it('work for a bot that went away is given up, begun or waiting', async () => {
  const gone = new AbortController()
  const calls = [29, 30].map((seconds) => call(seconds, gone.signal).catch((error: Error) => error.name))
  await until(() => pool.load().waiting === 1)
  expect(pool.load()).toEqual({ running: 1, waiting: 1 })
  // What keeps the signals has to outlast a collection of what nobody holds.
  for (let i = 0; i < 3; i += 1) {
    collect()
    await delay(100)
  }
  gone.abort()
  expect(await Promise.all(calls)).toEqual(['AbortError', 'AbortError'])
  await until(() => pool.load().running === 0)
  expect(pool.load()).toEqual({ running: 0, waiting: 0 })
})
