import fc from 'fast-check'
import { expect, it } from 'vitest'
import { repeatedName } from '../../src/api/repeated-name.ts'
import { buildApp } from '../held-app.ts'

const found = (text: string) => repeatedName(text, JSON.parse(text))

// RFC 6901 pointers, by hand.
it.each([
  ['{"a":1,"a":2}', '/a'],
  ['{"a":1,"\\u0061":2}', '/a'],
  ['{"a" \n:1,"b":{"c":[1,{"d":1},{"d":2,"e":{},"d":3}]}}', '/b/c/2/d'],
  ['[[],{"x/y":1,"x/y":1}]', '/1/x~1y'],
  ['{"a":"\\": \\":","a":1}', '/a'],
  ['{"":1,"":2}', '/'],
])('%s has a name twice', (text, at) => {
  expect(found(text)).toBe(at)
})

it.each([
  '{"a":1,"b":{"a":1},"c":[{"a":1},{"a":1}]}',
  '{"a":"\\": \\":"}',
  '{"a":"x\\":","b":"a"}',
  '[{"a":1},{"a":2}]',
  '1',
  'null',
  `${'['.repeat(50_000)}${']'.repeat(50_000)}`,
])('%.60s has none', (text) => {
  expect(found(text)).toBeUndefined()
})

it('what was written by JSON.stringify has none, and a name put in once more is found, seed 8259', () => {
  fc.assert(
    fc.property(
      fc.dictionary(fc.string(), fc.jsonValue()),
      fc.integer({ min: 0, max: 2 }),
      (object, spaces) => {
        const text = JSON.stringify(object, null, spaces)
        const [name] = Object.keys(object)
        const twice =
          name === undefined
            ? undefined
            : text.replace('{', () => `{${JSON.stringify(name)}:${JSON.stringify(text)},`)
        return found(text) === undefined && (twice === undefined || found(twice) !== undefined)
      },
    ),
    { seed: 8259, numRuns: 1000 },
  )
})

it('a body with a name twice is refused, and where is said', async () => {
  const app = await buildApp()
  const response = await app.inject({
    method: 'POST',
    url: '/v1/port',
    headers: { 'content-type': 'application/json' },
    payload: '{"netVolumeL":4,"innerDiameterMm":30,"tuningHz":80,"tuningHz":90}',
  })
  expect(response.statusCode).toBe(400)
  expect(response.json()).toMatchObject({
    type: '/problems/not-readable',
    errors: [{ at: '/tuningHz', message: expect.stringContaining('twice') }],
  })
  await app.close()
})
