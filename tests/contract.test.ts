import { readdir, readFile } from 'node:fs/promises'
import { describe, expect, it } from 'vitest'
import { contractOf } from '../src/api/contract.ts'
import { exampleQuery } from '../src/docs/example-query.ts'
import { contractChecks, examplesOf } from './api/contract-checks.ts'
import { buildApp } from './held-app.ts'

const app = await buildApp()
await app.ready()
const contract = contractOf(app)
const faultsOf = contractChecks(contract)
const calculations = examplesOf(contract)
const operations = Object.entries(contract.paths).flatMap(([path, methods]) =>
  Object.entries(methods).map(([method, operation]) => ({ path, method, operation })),
)

describe('the contract', () => {
  it('is the one kept in openapi/openapi.json; after a change run npm run openapi', async () => {
    const kept = await readFile(new URL('../openapi/openapi.json', import.meta.url), 'utf8')
    expect(JSON.parse(kept)).toEqual(JSON.parse(JSON.stringify(contract)))
  })

  it('is what /openapi.json serves', async () => {
    const served = await app.inject('/openapi.json')
    expect(served.json()).toEqual(JSON.parse(JSON.stringify(contract)))
  })

  it('names every operation once', () => {
    const names = operations.map(({ operation }) => operation.operationId)
    expect(names.length).toBeGreaterThan(0)
    expect(new Set(names).size).toBe(names.length)
  })

  it.each(operations)('$method $path says when to use it', ({ operation }) => {
    expect(operation.description.length).toBeGreaterThan(80)
    expect(operation.summary).not.toBe('')
  })

  it('has 304 for GET alone, without content of any type (RFC 9110, section 15.4.5)', () => {
    const given = operations.flatMap(({ method, operation: { responses } }) =>
      responses['304'] === undefined ? [] : [{ method, content: responses['304'].content }],
    )
    expect(given.length).toBeGreaterThan(3)
    expect(given.filter(({ method, content }) => method !== 'get' || content !== undefined)).toEqual([])
  })

  it('allows text for a quantity on the way in, and gives numbers on the way out', () => {
    const { PortRequest } = contract.components.schemas
    expect(PortRequest?.properties?.['netVolumeL']?.type).toEqual(['number', 'string'])
    const answer = contract.paths['/v1/port']?.post?.responses['200']?.content?.['application/json']?.schema
    expect(answer?.properties?.['port']?.properties?.['areaCm2']?.type).toBe('number')
  })
})

describe('every example really runs', () => {
  it.each(calculations)('POST $path', async ({ path, example }) => {
    const response = await app.inject({
      method: 'POST',
      url: `${path}?working=true`,
      payload: { ...Object(example) },
    })
    expect(response.statusCode).toBe(200)
    expect(faultsOf(path, 'post', response)).toEqual([])
    expect(response.json().working.length).toBeGreaterThan(0)
  })

  it.each(calculations)('POST $path as one sentence', async ({ path, example }) => {
    const response = await app.inject({
      method: 'POST',
      url: path,
      headers: { accept: 'text/plain' },
      payload: { ...Object(example) },
    })
    expect(faultsOf(path, 'post', response)).toEqual([])
    expect(response.body).toMatch(/^[^\n]+\.$/)
  })

  it.each(calculations.filter(({ get }) => get !== undefined))(
    'GET $path gives the same answer as POST',
    async ({ path, example }) => {
      const [got, posted] = await Promise.all([
        app.inject(`${path}?${exampleQuery(example)}`),
        app.inject({ method: 'POST', url: path, payload: { ...Object(example) } }),
      ])
      expect(faultsOf(path, 'get', got)).toEqual([])
      expect(got.json()).toEqual(posted.json())
    },
  )

  it.each(calculations.filter(({ get }) => get !== undefined))(
    'GET $path with the examples of its parameters, all at once',
    async ({ path, get }) => {
      const given = (get?.parameters ?? []).filter(({ example }) => example !== undefined)
      const query = exampleQuery(Object.fromEntries(given.map(({ name, example }) => [name, example])))
      const response = await app.inject(`${path}?${query}`)
      expect(response.statusCode).toBe(200)
      expect(response.body).toMatch(/^(ready|review|blocked)$/)
    },
  )
})

describe('every design of tests/designs', async () => {
  const folder = new URL('designs/', import.meta.url)
  it.each((await readdir(folder)).filter((name) => name.endsWith('.json')))(
    '%s: a blocked answer says so, and every finding points into the request',
    async (file) => {
      const design = JSON.parse(await readFile(new URL(file, folder), 'utf8'))
      const response = await app.inject({ method: 'POST', url: '/v1/design-check', payload: design })
      const { answer, verdict, findings } = response.json()
      expect(response.statusCode).toBe(200)
      expect(answer.startsWith('Do not build it like this: ')).toBe(verdict === 'blocked')
      expect(answer.startsWith('Mind ')).toBe(verdict === 'review')
      for (const { at } of findings) expect(memberAt(design, at), at).toBeDefined()
    },
  )
})

/** No name in a design has a slash or a tilde, so nothing in these pointers is escaped. */
const memberAt = (design: object, pointer: string): unknown =>
  pointer
    .split('/')
    .slice(1)
    .reduce((inner: unknown, name) => Reflect.get(Object(inner), name), design)
