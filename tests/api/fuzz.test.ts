import fc, { type Arbitrary } from 'fast-check'
import { afterAll, describe, expect, it } from 'vitest'
import { contractOf } from '../../src/api/contract.ts'
import { isRecord } from '../../src/api/schema-node.ts'
import { sharedSchema } from '../../src/schema/shared.ts'
import { buildApp } from '../held-app.ts'
import { bodiesOf } from './arbitrary-body.ts'
import { contractChecks, examplesOf } from './contract-checks.ts'

const SEED = 20_260_103
const RUNS = 250
const PATIENCE_MS = 120_000

const app = await buildApp()
await app.ready()
afterAll(() => app.close())
const contract = contractOf(app)
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

/** The schema as the service reads it; the one in the contract allows text besides. */
const schemaOf = (path: string) => {
  const pointer = contract.paths[path]?.post?.requestBody?.content['application/json']?.schema.$ref ?? ''
  return sharedSchema(pointer.split('/').at(-1) ?? '') ?? {}
}

async function wrongWith(path: string, body: unknown, statuses: Set<number>): Promise<string[]> {
  const payload = JSON.stringify(body) ?? 'null'
  const headers = { 'content-type': 'application/json' }
  const response = await app.inject({ method: 'POST', url: `${path}?working=true`, payload, headers })
  statuses.add(response.statusCode)
  const unsaid = response.statusCode === 422 && response.json().errors.length === 0
  return [
    ...(response.statusCode >= 500 ? [`status ${response.statusCode}`] : []),
    ...(unsaid ? ['refused without a fault'] : []),
    ...faultsOf(path, 'post', response),
  ]
}

describe(`${RUNS} bodies that fit or nearly fit, of seed ${SEED}`, () => {
  it.each(examplesOf(contract))(
    'make no 5xx of $path, and every answer is one that the contract declares',
    async ({ path, example }) => {
      const statuses = new Set<number>()
      const bodies = fc.oneof(bent(example), bodiesOf(schemaOf(path)))
      await fc.assert(
        fc.asyncProperty(bodies, async (body) => {
          expect(await wrongWith(path, body, statuses)).toEqual([])
        }),
        { seed: SEED, numRuns: RUNS },
      )
      expect([...statuses].sort()).toEqual([200, 422])
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
