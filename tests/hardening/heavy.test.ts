import { request } from 'undici'
import { describe, expect, it } from 'vitest'
import { contractOf } from '../../src/api/contract.ts'
import type { Heavy, HeavyWork, Waiting } from '../../src/api/heavy-work.ts'
import { Refused } from '../../src/api/problem.ts'
import { isRecord } from '../../src/api/schema-node.ts'
import * as worker from '../../src/workers/worker.ts'
import { examplesOf } from '../api/contract-checks.ts'
import { buildApp } from '../held-app.ts'

/** Heavy work done here, with a note of what it was and for whom. */
function noted(refuse: (name: string) => boolean = () => false) {
  const names: string[] = []
  const clients: string[] = []
  const here =
    <Body, Result>(name: string, compute: (body: Body) => Result | Promise<Result>) =>
    async (body: Body, { client }: Waiting): Promise<Result> => {
      names.push(name)
      clients.push(client)
      if (refuse(name)) throw new Refused('busy', 'Too much work is waiting already.')
      return compute(body)
    }
  const heavyWork: HeavyWork = {
    cutList: here('cutList', worker.cutList),
    cutListPdf: here('cutListPdf', worker.cutListPdf),
    designCheck: here('designCheck', worker.designCheck),
    buildSheetPdf: here('buildSheetPdf', worker.buildSheetPdf),
    driverMeasurement: here('driverMeasurement', worker.driverMeasurement),
    asBuilt: here('asBuilt', worker.asBuilt),
  }
  return { heavyWork, names, clients }
}

const { heavyWork, names, clients } = noted()
const app = await buildApp({ heavyWork })
await app.ready()
const examples = new Map(examplesOf(contractOf(app)).map(({ path, example }) => [path, example]))
const exampleOf = (path: string): Record<string, unknown> => {
  const example = examples.get(path)
  if (!isRecord(example)) throw new Error(`${path} has no example`)
  return structuredClone(example)
}

async function asideFor(path: string, change: (body: Record<string, unknown>) => Record<string, unknown>) {
  names.length = 0
  const response = await app.inject({ method: 'POST', url: path, payload: change(exampleOf(path)) })
  expect(response.statusCode, response.body.slice(0, 300)).toBe(200)
  return [...names]
}

const boards = (count: number) =>
  Array.from({ length: count }, (_, i) => ({
    id: `board ${i}`,
    lengthMm: 600 + 10 * i,
    widthMm: 400 + 5 * i,
    thicknessMm: 12,
    count: 20,
  }))

/** A coil of 3.4 ohm and 0.2 mH before a parallel resonance at 100 Hz, Q 3. */
const sweep = (readings: number) => {
  const frequencyHz = Array.from({ length: readings }, (_, i) => 20 * 50 ** (i / (readings - 1)))
  const impedanceOhm = frequencyHz.map((hz) => {
    const x = 3 * (hz / 100 - 100 / hz)
    return Math.hypot(3.4 + 20 / (1 + x * x), 2 * Math.PI * hz * 2e-4 - (20 * x) / (1 + x * x))
  })
  return { frequencyHz, impedanceOhm }
}

describe('work that would keep everybody waiting is done aside, and nothing else is', () => {
  it.each([
    ['/v1/cut-list', 'cutList', { stock: boards(50), boxes: 8 }],
    ['/v1/cut-list', 'cutList', { effort: { seconds: 0.01 } }],
    ['/v1/design-check', 'designCheck', { stock: boards(50), boxes: 16, amplifier: { channels: 16 } }],
    [
      '/v1/driver-measurement',
      'driverMeasurement',
      { drivers: [{ id: 'one', sdCm2: 28, freeAir: sweep(500) }] },
    ],
  ])('%s: %s', async (path, name, change) => {
    expect(await asideFor(path, (example) => example)).toEqual([])
    expect(await asideFor(path, (example) => ({ ...example, ...change }))).toEqual([name])
  })

  it('a finished box against its plan always is', async () => {
    expect(await asideFor('/v1/as-built', (example) => example)).toEqual(['asBuilt'])
  })

  it.each(['\n', '\r\n', '\r'])('readings as text count too, in lines that end in %j', async (lineEnd) => {
    const { frequencyHz, impedanceOhm } = sweep(500)
    const csv = frequencyHz.map((hz, i) => `${hz.toFixed(2)};${impedanceOhm[i]?.toFixed(3)}`).join(lineEnd)
    const asked = asideFor('/v1/driver-measurement', () => ({
      drivers: [{ id: 'one', sdCm2: 28, freeAir: { csv } }],
    }))
    expect(await asked).toEqual(['driverMeasurement'])
  })
})

describe('rows of a sheet', () => {
  /** Drivers of another kind are rows that nobody has asked for yet. */
  const rows = (count: number, kind = 'd') =>
    [
      'drivers.0.id,drivers.0.sdCm2,drivers.0.freeAir.csv',
      ...Array.from({ length: count }, (_, i) => {
        const { frequencyHz, impedanceOhm } = sweep(320)
        const text = frequencyHz.map((hz, k) => `${hz.toFixed(1)};${impedanceOhm[k]?.toFixed(2)}`).join('\n')
        return `${kind}${i},28,"${text}"`
      }),
    ].join('\n')
  const headers = { 'content-type': 'text/csv' }

  it('that are refused as busy say so, each for itself', async () => {
    let asked = 0
    const some = noted(() => asked++ === 1)
    const busy = await buildApp({ heavyWork: some.heavyWork })
    const { body, statusCode } = await busy.inject({
      method: 'POST',
      url: '/v1/driver-measurement',
      payload: rows(3),
      headers,
    })
    await busy.close()
    expect(statusCode).toBe(200)
    expect(body.match(/error: Too much work is waiting already\./g)).toHaveLength(1)
    expect(some.names).toHaveLength(3)
    // Behind the cells of a row stand its verdict, its answer and its error.
    expect(body.match(/"?,(ready|review|blocked),/g)).toHaveLength(2)
  })

  it('that the service fails at tell nothing of its inside', async () => {
    const failing: Heavy<typeof worker.driverMeasurement> = async () => {
      throw new Error('secret of the inside')
    }
    const broken = await buildApp({ heavyWork: { ...heavyWork, driverMeasurement: failing } })
    const { body } = await broken.inject({
      method: 'POST',
      url: '/v1/driver-measurement',
      payload: rows(2, 'unasked'),
      headers,
    })
    await broken.close()
    expect(body.match(/error: The service failed/g)).toHaveLength(2)
    expect(body).not.toContain('secret')
  })

  it('of one request are waited for by one listener', async () => {
    const warnings: Error[] = []
    const note = (warning: Error) => warnings.push(warning)
    process.on('warning', note)
    const url = await app.listen({ host: '127.0.0.1', port: 0 })
    const { body, statusCode } = await request(`${url}/v1/driver-measurement`, {
      method: 'POST',
      headers,
      body: rows(30),
    })
    const text = await body.text()
    process.off('warning', note)
    expect(statusCode).toBe(200)
    expect(text.match(/error:[^\n]*/g)).toBeNull()
    expect(warnings).toEqual([])
  })
})

describe('a tool that a bot calls', () => {
  it('is heavy work of the address of the bot, and marked like any answer', async () => {
    clients.length = 0
    const response = await app.inject({
      method: 'POST',
      url: '/mcp',
      remoteAddress: '10.2.3.4',
      headers: {
        host: 'localhost',
        accept: 'application/json, text/event-stream',
        'x-request-id': 'bot-1',
      },
      payload: {
        jsonrpc: '2.0',
        id: 1,
        method: 'tools/call',
        params: { name: 'cutList', arguments: { ...exampleOf('/v1/cut-list'), effort: { seconds: 0.02 } } },
      },
    })
    expect(response.json().result.isError).toBeUndefined()
    expect(response.headers).toMatchObject({ 'x-request-id': 'bot-1', 'x-content-type-options': 'nosniff' })
    expect(clients).toEqual(['10.2.3.4'])
  })
})
