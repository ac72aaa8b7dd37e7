import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { readFile, writeFile } from 'node:fs/promises'
import { connect, type Socket } from 'node:net'
import { createInterface } from 'node:readline'
import { setTimeout as delay } from 'node:timers/promises'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { builtService } from '../built.ts'
import { ended } from '../operations/instances.ts'

const MOST_ROWS = 20_000
const MOST_OPEN = 8
const MIB = 1024 * 1024
const HEAP_MIB = 160
const STARTED_WITHIN_MS = 60_000

let built: Awaited<ReturnType<typeof builtService>>
let child: ChildProcess
let address: URL

/** The service in a process of its own with a small heap, as it would run in a small container. */
beforeAll(async () => {
  built = await builtService()
  const script = new URL('listens.js', built.url)
  await writeFile(
    script,
    "import { buildApp } from './app.js'\nconst app = await buildApp({ trustProxy: ['loopback'] })\nconsole.log(await app.listen({ host: '127.0.0.1', port: 0 }))\n",
  )
  child = spawn('node', [`--max-old-space-size=${HEAP_MIB}`, fileURLToPath(script)], {
    stdio: ['ignore', 'pipe', 'ignore'],
  })
  if (child.stdout === null) throw new Error('the service says nothing')
  const [line] = await once(createInterface(child.stdout), 'line')
  address = new URL(String(line))
}, STARTED_WITHIN_MS)

afterAll(async () => {
  await ended(child, 'SIGKILL')
  await built.remove()
})

/** Lets the kernel count the most from here on. */
const forgetPeak = () => writeFile(`/proc/${child.pid}/clear_refs`, '5')

/** Resident memory of the service, as the kernel counts it: now, and the most since the peak was forgotten. */
async function residentMiB() {
  const status = await readFile(`/proc/${child.pid}/status`, 'utf8')
  const read = (name: string) => Number(new RegExp(`${name}:\\s+(\\d+) kB`).exec(status)?.[1]) / 1024
  return { now: read('VmRSS'), most: read('VmHWM') }
}

const post = (body: string | Buffer, client = '192.0.2.9') =>
  fetch(new URL('/v1/port', address), {
    method: 'POST',
    headers: { 'content-type': 'text/csv', 'x-forwarded-for': client },
    body,
  })

/** How long others waited at most, asking over and over until the work is done. */
async function longestWaitMs(work: Promise<unknown>): Promise<number> {
  let isDone = false
  let longest = 0
  const mark = () => {
    isDone = true
  }
  work.then(mark, mark)
  while (!isDone) {
    const before = performance.now()
    expect((await fetch(new URL('/health/live', address))).status).toBe(200)
    longest = Math.max(longest, performance.now() - before)
    await delay(5)
  }
  return longest
}

/** A client that sends its rows, or what it says are more, and then reads nothing. */
function deaf(body: string, client: string, length = Buffer.byteLength(body)): Socket {
  const socket = connect(Number(address.port), address.hostname)
  socket.on('error', () => undefined).pause()
  socket.write(
    `POST /v1/port HTTP/1.1\r\nHost: ${address.host}\r\nX-Forwarded-For: ${client}\r\nContent-Type: text/csv\r\nContent-Length: ${length}\r\n\r\n${body}`,
  )
  return socket
}

const HEADER = 'netVolumeL,innerDiameterMm,tuningHz,#n\n'

describe.runIf(process.platform === 'linux')('memory', () => {
  it.each([
    ['commas', `a,b\n${',\n'.repeat(4_000_000)}`],
    ['short rows', `n\n${'1\n'.repeat(1_000_000)}`],
    ['one row of commas', `a,b\n${','.repeat(8_000_000)}\n`],
    ['one header of commas', `${','.repeat(8_000_000)}\n1\n`],
    ['pairs of quotes', `a,b\n"x${'""\n'.repeat(2_700_000)}`],
    ['quotes that open', `a,b\n${'"""\n'.repeat(2_000_000)}`],
    ['quotes that are text, on one line', '"a"b,'.repeat(1_600_000)],
    ['rows of quotes that are text', `n\n${`${'"a"b,'.repeat(12_000)}\n`.repeat(130)}`],
    ['quotes that close in the next line and never at last', '",",\n""a'.repeat(1_000_000)],
    [
      'searches for a quote that run to the end',
      `id,b\n${'y","\n'.repeat(1500)}y","${'""'.repeat(4_000_000)}`,
    ],
    ['empty lines', `n\n${'\n'.repeat(8_000_000)}`],
    ['long rows of commas', `n\n${`${','.repeat(65_000)}\n`.repeat(120)}`],
  ])('a sheet of nothing but %s takes little memory and keeps nobody waiting', async (_, text) => {
    await (await post(`${HEADER}4,30,80,a\n`)).text()
    await forgetPeak()
    const before = await residentMiB()
    const answered = post(Buffer.from(text)).then(async (response) => {
      await response.text()
      return response.status
    })
    expect(await longestWaitMs(answered)).toBeLessThan(1500)
    expect([200, 400, 413]).toContain(await answered)
    // The body once in parts and once whole, and some room for the collector.
    expect((await residentMiB()).most - before.now).toBeLessThan(90)
  })

  it('clients that read nothing hold their rows and no more', async () => {
    await forgetPeak()
    const before = await residentMiB()
    const body = `${HEADER}${`4,30,80,${'x'.repeat(300)}\n`.repeat(MOST_ROWS)}`
    const sockets = Array.from({ length: 6 }, (_, i) => deaf(body, `192.0.2.${i}`))
    await delay(6000)
    const { most } = await residentMiB()
    for (const socket of sockets) socket.destroy()
    expect(most - before.now).toBeLessThan(6 * 30)
    expect((await fetch(new URL('/health/live', address))).status).toBe(200)
  })
})

describe('more than there is room for is refused', () => {
  it(`one row above ${MOST_ROWS}, before any is answered`, async () => {
    const response = await post(`n\n${'1\n'.repeat(MOST_ROWS + 1)}`)
    expect(response.status).toBe(413)
    expect(await response.json()).toMatchObject({
      type: '/problems/too-large',
      detail: `The sheet has more than ${MOST_ROWS} rows below its header; send it in parts.`,
    })
    const most = await post(`n\n${'1\n'.repeat(MOST_ROWS)}`)
    expect(most.status).toBe(200)
    expect((await most.text()).trimEnd().split('\r\n')).toHaveLength(MOST_ROWS + 1)
  })

  it('a header of 501 columns', async () => {
    const response = await post(`${','.repeat(500)}\n`)
    expect(response.status).toBe(413)
    expect(await response.json()).toMatchObject({ detail: expect.stringContaining('501 columns') })
    expect((await post(`${','.repeat(499)}\n`)).status).toBe(200)
  })

  it('a sheet too large for the limit of sheets, which the answer names', async () => {
    const response = await post('x'.repeat(8 * MIB + 1))
    expect(response.status).toBe(413)
    expect(await response.json()).toMatchObject({ detail: expect.stringContaining('8 MiB') })
  })

  it('a sheet above those that are open, until one of them ends', async () => {
    const body = `${HEADER}${`4,30,80,${'x'.repeat(300)}\n`.repeat(MOST_ROWS)}`
    const sockets = Array.from({ length: MOST_OPEN }, (_, i) => deaf(body, `192.0.2.${i}`))
    const one = `${HEADER}4,30,80,a\n`
    let response = await post(one)
    for (let tries = 0; response.status !== 503 && tries < 50; tries += 1) {
      await delay(50)
      response = await post(one)
    }
    expect(response.status).toBe(503)
    expect(Number(response.headers.get('retry-after'))).toBeGreaterThan(0)
    expect(await response.json()).toMatchObject({ type: '/problems/busy' })
    sockets[0]?.destroy()
    for (let tries = 0; response.status === 503 && tries < 50; tries += 1) {
      await delay(50)
      response = await post(one)
    }
    expect(response.status).toBe(200)
    for (const socket of sockets) socket.destroy()
  })

  it('sheets of one client that never arrive, which leave room for the others', async () => {
    const client = '192.0.2.7'
    const one = `${HEADER}4,30,80,a\n`
    const sockets = Array.from({ length: MOST_OPEN }, () => deaf(HEADER, client, MIB))
    let response = await post(one, client)
    for (let tries = 0; response.status !== 503 && tries < 50; tries += 1) {
      await delay(50)
      response = await post(one, client)
    }
    expect(response.status).toBe(503)
    expect(await response.json()).toMatchObject({ detail: expect.stringContaining('of this client') })
    expect((await post(one)).status).toBe(200)
    for (const socket of sockets) socket.destroy()
  })
})
