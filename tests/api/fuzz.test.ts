import fc, { type Arbitrary } from 'fast-check'
import { afterAll, describe, expect, it, vi } from 'vitest'
import { contractOf } from '../../src/api/contract.ts'
import { isRecord } from '../../src/api/schema-node.ts'
import { sharedSchema } from '../../src/schema/shared.ts'
import { buildApp } from '../held-app.ts'
import { bodiesOf } from './arbitrary-body.ts'
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

/** What people and programs put into fields by mistake. */
const ODD = [
  null,
  true,
  '',
  'none',
  '3 kg',
  '1e999',
  '1/0 in',
  '6 1/4 in',
  -1,
  0,
  1e-300,
  1e300,
  0.1,
  7,
  [],
  {},
  [[]],
  'μ',
  '__proto__',
]

/** A body with one to three places swapped, dropped or added to. */
const bent = (example: unknown): Arbitrary<unknown> => {
  const places = placesOf(example)
  const change = fc.tuple(
    fc.constantFrom(...places),
    fc.constantFrom('swap', 'drop', 'add'),
    fc.constantFrom(...ODD),
  )
  return fc.array(change, { minLength: 1, maxLength: 3 }).map((changes) => {
    const body = structuredClone(example)
    for (const [place, how, odd] of changes) changeAt(body, place, how, odd)
    return body
  })
}

function placesOf(value: unknown, path: string[] = []): string[][] {
  if (typeof value !== 'object' || value === null) return [path]
  const below = Object.entries(value).flatMap(([name, member]) => placesOf(member, [...path, name]))
  return path.length === 0 ? below : [path, ...below]
}

function changeAt(body: unknown, path: readonly string[], how: string, odd: unknown): void {
  const holder = path
    .slice(0, -1)
    .reduce(
      (inner: unknown, name) =>
        isRecord(inner) || Array.isArray(inner) ? Reflect.get(inner, name) : undefined,
      body,
    )
  const name = path.at(-1) ?? ''
  if (typeof holder !== 'object' || holder === null) return
  if (how === 'drop') Reflect.deleteProperty(holder, name)
  else Reflect.set(holder, how === 'swap' ? name : `${name}X`, odd)
}

/** What nobody means well: any JSON, nests, long texts, long lists, names that are members of every object. */
const hostile = (example: unknown): Arbitrary<unknown> => {
  const nest = (depth: number): unknown => (depth === 0 ? 1 : [nest(depth - 1)])
  const poison = fc.oneof(
    fc.jsonValue(),
    fc.integer({ min: 20, max: 60 }).map(nest),
    fc.integer({ min: 500, max: 3000 }).map((length) => Array.from({ length }, (_, i) => i)),
    fc.integer({ min: 1000, max: 20_000 }).map((length) => '9'.repeat(length)),
    fc.constantFrom('\ud800', '\u0000', '‮', '{{7*7}}', '=cmd()', '1 mm; 2 mm', 'e', 'i', 'mm mm', '2^2^9 mm'),
    fc.constantFrom('constructor', 'toString', 'hasOwnProperty').map((name) => ({ [name]: 1 })),
  )
  const places = placesOf(example)
  const within = fc.tuple(fc.constantFrom(...places), poison).map(([place, odd]) => {
    const body = structuredClone(example)
    changeAt(body, place, 'swap', odd)
    return body
  })
  return fc.oneof(poison, within)
}

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
      const bodies = fc.oneof(bent(example), bodiesOf(schemaOf(path)), hostile(example))
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

describe(`${RUNS} queries of seed ${SEED}`, () => {
  const names = [
    'netVolumeL',
    'tuningHz',
    'innerDiameterMm',
    'ends.outer',
    'tubes.0.lengthMm',
    'tubes',
    'pick',
    'format',
    '__proto__.x',
    '..',
    '',
  ]
  const texts = ['3', '26 mm', '105', 'none', '-1', 'text', 'port.lengthMm', '%', '\u0000', 'NaN']
  const queries = fc.array(fc.tuple(fc.constantFrom(...names), fc.constantFrom(...texts)), { maxLength: 8 })

  it('make no 5xx of /v1/port', async () => {
    await fc.assert(
      fc.asyncProperty(queries, async (pairs) => {
        const response = await app.inject(`/v1/port?${new URLSearchParams(pairs)}`)
        expect(faultsOf('/v1/port', 'get', response)).toEqual([])
        expect(response.statusCode).toBeLessThan(500)
      }),
      { seed: SEED, numRuns: RUNS },
    )
  })
})
