import fc from 'fast-check'
import { afterAll, describe, expect, it, vi } from 'vitest'
import { contractOf } from '../../src/api/contract.ts'
import { isRecord } from '../../src/api/schema-node.ts'
import { sharedSchema } from '../../src/schema/shared.ts'
import { buildApp } from '../held-app.ts'
import { bodiesOf } from './arbitrary-body.ts'
import { bent, hostile, turned } from './bent-body.ts'
import { contractChecks, examplesOf } from './contract-checks.ts'

const SEED = Number(process.env['FUZZ_SEED'] ?? 20_260_103)
/** Inputs of all operations together; `npm run fuzz` asks for ten times as many. */
const INPUTS = Number(process.env['FUZZ_INPUTS'] ?? 2000)
const IS_LONG = process.env['FUZZ_INPUTS'] !== undefined
const PATIENCE_MS = IS_LONG ? 3_600_000 : 180_000
/** No answer may take more of the processor, whoever else uses it; held in the long run alone. */
const LONGEST_MS = 2000

const app = await buildApp()
await app.ready()
afterAll(() => app.close())
const contract = contractOf(app)
const RUNS = Math.ceil(INPUTS / examplesOf(contract).length)
const faultsOf = contractChecks(contract)

/** The schema as the service reads it; the one in the contract allows text besides. */
const schemaOf = (path: string) => {
  const pointer = contract.paths[path]?.post?.requestBody?.content['application/json']?.schema.$ref ?? ''
  return sharedSchema(pointer.split('/').at(-1) ?? '') ?? {}
}

/** JSON turns NaN and Infinity into null, where they would hide among values that may not exist. */
const notFinite: string[] = []
const stringify = JSON.stringify
function findNotFinite(value: unknown, at: string): void {
  if (typeof value === 'number' && !Number.isFinite(value)) notFinite.push(`${at} is ${value}`)
  if (typeof value === 'object' && value !== null)
    for (const [name, member] of Object.entries(value)) findNotFinite(member, `${at}/${name}`)
}
const watched: typeof JSON.stringify = (value: unknown, ...rest: unknown[]) => {
  if (isRecord(value) && 'verdict' in value) findNotFinite(value, '')
  return Reflect.apply(stringify, JSON, [value, ...rest])
}
vi.spyOn(JSON, 'stringify').mockImplementation(watched)

async function wrongWith(path: string, body: unknown, statuses: Set<number>): Promise<string[]> {
  const payload = stringify(body) ?? 'null'
  const headers = { 'content-type': 'application/json', 'x-request-id': 'fuzz' }
  const ask = () => app.inject({ method: 'POST', url: `${path}?working=true`, payload, headers })
  notFinite.length = 0
  const began = process.cpuUsage()
  const response = await ask()
  const { user, system } = process.cpuUsage(began)
  const took = (user + system) / 1000
  statuses.add(response.statusCode)
  const again = await ask()
  const unsaid = response.statusCode === 422 && response.json().errors.length === 0
  return [
    ...(response.statusCode >= 500 ? [`status ${response.statusCode}`] : []),
    ...(unsaid ? ['refused without a fault'] : []),
    ...notFinite,
    ...(again.body === response.body ? [] : ['other bytes for the same input']),
    ...(IS_LONG && took > LONGEST_MS ? [`took ${Math.round(took)} ms`] : []),
    ...faultsOf(path, 'post', response),
  ]
}

describe(`${RUNS} bodies that fit, nearly fit or mean no good, of seed ${SEED}`, () => {
  it.each(examplesOf(contract))(
    'make no 5xx of $path, and every answer is one that the contract declares',
    async ({ path, example }) => {
      const statuses = new Set<number>()
      // The service compiles its check a second after the start or at the first body, once; no input makes it slower.
      await wrongWith(path, example, statuses)
      const bodies = fc.oneof(turned(example), bent(example), bodiesOf(schemaOf(path)), hostile(example))
      await fc.assert(
        fc.asyncProperty(bodies, async (body) => {
          expect(await wrongWith(path, body, statuses)).toEqual([])
        }),
        { seed: SEED, numRuns: RUNS },
      )
      expect([...statuses].sort()).toEqual(expect.arrayContaining([200, 422]))
      for (const status of statuses) expect([200, 400, 413, 422]).toContain(status)
    },
    PATIENCE_MS,
  )
})

/** The example as the names and texts of a query. */
function pairsOf(value: unknown, name = ''): [string, string][] {
  if (Array.isArray(value) && value.every((item) => typeof item !== 'object'))
    return value.map((item): [string, string] => [name, String(item)])
  if (typeof value !== 'object' || value === null) return [[name, String(value)]]
  return Object.entries(value).flatMap(([key, member]) =>
    pairsOf(member, name === '' ? key : `${name}.${key}`),
  )
}

describe(`${RUNS} queries of seed ${SEED}`, () => {
  const odd = [
    '..',
    '',
    '.',
    '0',
    '__proto__.x',
    'constructor',
    'toString.0',
    'tubes.4294967295',
    'pick',
    'format',
  ]
  const texts = [
    '3',
    '26 mm',
    '1/0 in',
    '1e999',
    '-0',
    'none',
    '-1',
    'text',
    'port.lengthMm',
    '%',
    '\u0000',
    'NaN',
  ]
  const operations = examplesOf(contract).filter(({ get }) => get !== undefined)

  it.each(operations)(
    'make no 5xx of $path',
    async ({ path, get, example }) => {
      const known = (get?.parameters ?? []).map(({ name }) => name)
      const usual = pairsOf(example)
      const pair = fc.tuple(fc.constantFrom(...known, ...odd), fc.constantFrom(...texts))
      const queries = fc
        .tuple(fc.subarray(usual, { minLength: usual.length - 2 }), fc.array(pair, { maxLength: 3 }))
        .map(([kept, more]) => [...kept, ...more])
      const statuses = new Set<number>()
      await fc.assert(
        fc.asyncProperty(queries, async (pairs) => {
          const response = await app.inject(`${path}?${new URLSearchParams(pairs)}`)
          statuses.add(response.statusCode)
          expect(response.statusCode).toBeLessThan(500)
          expect(faultsOf(path, 'get', response)).toEqual([])
        }),
        { seed: SEED, numRuns: RUNS },
      )
      expect([...statuses]).toEqual(expect.arrayContaining([200, 422]))
    },
    PATIENCE_MS,
  )
})
