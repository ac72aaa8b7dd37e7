import { describe, expect, it } from 'vitest'
import { contractOf } from '../../src/api/contract.ts'
import { bodyReader } from '../../src/api/read-body.ts'
import { isRecord } from '../../src/api/schema-node.ts'
import { sharedSchema } from '../../src/schema/shared.ts'
import { Wiring } from '../../src/schema/wiring.ts'
import { examplesOf } from '../api/contract-checks.ts'
import { buildApp } from '../held-app.ts'

const app = await buildApp()
await app.ready()
const contract = contractOf(app)

/** What in a schema has no end: lists, texts that are no quantities, objects that take any name. */
function endless(node: unknown, at: string, seen = new Set<string>()): string[] {
  if (!isRecord(node)) return []
  const { $ref, properties, items, anyOf } = node
  const name = typeof $ref === 'string' ? $ref.replace(/#$/, '') : undefined
  if (name !== undefined && seen.has(name)) return []
  if (name !== undefined) return endless(sharedSchema(name), name, seen.add(name))
  const within: [string, unknown][] = [
    ...(Array.isArray(anyOf) ? anyOf.map((branch): [string, unknown] => [at, branch]) : []),
    [`${at}[]`, items],
    ...Object.entries(properties ?? {}).map(([key, member]): [string, unknown] => [`${at}.${key}`, member]),
  ]
  return [...endlessItself(node, at), ...within.flatMap(([place, inner]) => endless(inner, place, seen))]
}

function endlessItself(node: Record<string, unknown>, at: string): string[] {
  const is = (name: string) => [node['type']].flat().includes(name)
  // The reader of quantities has a limit of its own; see "a text that never ends".
  const isText = is('string') && !('x-unit' in node || 'enum' in node || 'const' in node)
  return [
    ...(is('array') && typeof node['maxItems'] !== 'number' ? [`${at} is a list without end`] : []),
    ...(isText && typeof node['maxLength'] !== 'number' ? [`${at} is a text without end`] : []),
    ...(is('object') && node['additionalProperties'] !== false ? [`${at} takes any name`] : []),
  ]
}

const bodySchemaOf = (path: string): unknown => {
  const schema = contract.paths[path]?.post?.requestBody?.content['application/json']?.schema
  return sharedSchema(schema?.$ref?.split('/').at(-1) ?? '')
}

describe('what a request may hold', () => {
  it.each(examplesOf(contract))('has an end everywhere in the body of $path', ({ path }) => {
    const schema = bodySchemaOf(path)
    expect(isRecord(schema)).toBe(true)
    expect(endless(schema, path)).toEqual([])
  })

  it('is found endless where it is', () => {
    const open = { type: 'object', properties: { a: { type: 'array', items: { type: 'string' } } } }
    expect(endless(open, 'x')).toEqual([
      'x takes any name',
      'x.a is a list without end',
      'x.a[] is a text without end',
    ])
  })
})

describe('a body that is too large to be looked at closely', () => {
  const read = bodyReader(Wiring)
  const nest = (depth: number): unknown => (depth === 0 ? 'main' : { series: [nest(depth - 1)] })
  const wide = (length: number) => Array.from({ length }, () => 7)
  // The validator takes a time that grows with the square of the wrong items: 19,000 of them kept everybody waiting for
  // half a minute. So of a list that is too long its length is told and nothing of its items.
  it.each([
    ['a list', { series: wide(19_000) }, '/series', 'must hold at most 32, holds 19000'],
    [
      'a list of a shape that was not meant',
      { capacitorUf: 1, parallel: wide(19_000) },
      '/parallel',
      'must hold at most 32, holds 19000',
    ],
    [
      'a list within',
      { parallel: ['a', { series: wide(500) }] },
      '/parallel/1/series',
      'must hold at most 32, holds 500',
    ],
    ['many values', { series: [wide(19_000), wide(19_000)] }, '', 'holds more than 20000 values'],
    ['a deep nest', nest(20), `${'/series/0'.repeat(16)}/series`, 'lies deeper than 32 levels'],
  ])('%s is told by one fault', async (_name, body, at, message) => {
    expect(await read(body)).toEqual({ faults: [{ at, message }] })
  })

  it.each([
    ['a million nines', '9'.repeat(200_000)],
    ['a sum that never ends', `${'1+'.repeat(20_000)}1 mm`],
    ['brackets', '('.repeat(100_000)],
  ])('a text that never ends: %s', async (_name, netVolumeL) => {
    const response = await app.inject({
      method: 'POST',
      url: '/v1/port',
      payload: { netVolumeL, innerDiameterMm: 26, tuningHz: 105 },
    })
    expect(response.statusCode).toBe(422)
    const { errors } = response.json()
    expect(errors).toEqual([{ at: '/netVolumeL', message: expect.any(String) }])
    expect(errors[0].message.length).toBeLessThan(300)
  })

  it.each([
    ['lists', '['.repeat(120_000) + ']'.repeat(120_000), 422],
    ['objects', `${'{"a":'.repeat(40_000)}1${'}'.repeat(40_000)}`, 422],
    ['lists without an end', '['.repeat(250_000), 400],
    ['quotes and strokes', '"\\'.repeat(60_000), 400],
  ])('a body of nothing but %s', async (_name, payload, status) => {
    const headers = { 'content-type': 'application/json' }
    const response = await app.inject({ method: 'POST', url: '/v1/port', payload, headers })
    expect(response.statusCode).toBe(status)
  })
})
