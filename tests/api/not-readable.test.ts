import { afterAll, describe, expect, it } from 'vitest'
import { buildApp } from '../held-app.ts'

const app = await buildApp()
afterAll(() => app.close())

const fits = { netVolumeL: 3, innerDiameterMm: 26, tuningHz: 105 }
const json = { 'content-type': 'application/json' }

const post = (payload: string | Buffer, headers: Record<string, string> = json, query = '') =>
  app.inject({ method: 'POST', url: `/v1/port${query}`, payload, headers })

describe('a body that cannot be read', () => {
  const latin1 = Buffer.from('{"name": "caf\u00e9"}', 'latin1')
  const utf16 = Buffer.from('{"count": 1}', 'utf16le')
  const prototype = '{"ends": {"constructor": {"prototype": {"x": 1}}}}'

  it.each([
    ['broken JSON', '{\n"netVolumeL": 3', {}, '', /not JSON at line 2, column 16: it ends where/],
    ['NaN', '{"netVolumeL": NaN}', {}, '', /at line 1, column 16: JSON has no NaN/],
    ['an empty body', '', {}, '', /^The body is empty; send it as JSON\.$/],
    ['a blank body', ' \n', {}, '', /^The body is empty/],
    ['a byte order mark alone', '\ufeff', {}, '', /^The body is empty/],
    ['__proto__', '{"ends": {"__proto__": {}}}', {}, '/ends/__proto__', /name is not taken/],
    ['__proto__ in disguise', '{"\\u005f_proto__": {}}', {}, '/__proto__', /name is not taken/],
    ['constructor.prototype', prototype, {}, '/ends/constructor', /name is not taken/],
    ['Latin-1', latin1, {}, '', /not text in UTF-8: character 14 /],
    ['UTF-16', utf16, {}, '', /not text in UTF-8: character 2 /],
  ])(
    '%s is told with its cause, in the detail and as one fault',
    async (_name, payload, headers, at, cause) => {
      const response = await post(payload, { ...json, ...headers })
      expect(response.statusCode).toBe(400)
      const { detail, errors } = response.json()
      expect(errors).toEqual([{ at, message: expect.stringMatching(cause) }])
      expect(detail).toContain(errors[0].message)
      const line = await post(payload, { ...json, ...headers }, '?errors=text')
      expect([line.statusCode, line.body]).toEqual([
        200,
        `error: ${at} ${errors[0].message}`.replace('  ', ' '),
      ])
    },
  )

  it.each([
    ['a member', `{"${'secret'.repeat(99)}": {"__proto__": 1}}`, {}],
    ['a word', `{"count": ${'secret'.repeat(99)}}`, {}],
    ['an encoding', '{}', { 'content-encoding': 'secret'.repeat(99) }],
  ])('echoes little of %s', async (_name, payload, headers) => {
    const { detail } = (await post(payload, { ...json, ...headers })).json()
    expect(detail.split('secret').length - 1).toBeLessThanOrEqual(10)
  })

  it.each(['application/json', 'text/csv'])('packed as %s is not unpacked', async (type) => {
    const response = await post(JSON.stringify(fits), { 'content-type': type, 'content-encoding': 'gzip' })
    expect(response.statusCode).toBe(415)
    const cause = 'The body is packed as gzip; send it plain.'
    expect(response.json()).toMatchObject({ detail: cause, errors: [{ at: '', message: cause }] })
  })

  it('takes a byte order mark before the JSON, and a harmless member named constructor as any unknown one', async () => {
    expect((await post(`\ufeff${JSON.stringify(fits)}`)).statusCode).toBe(200)
    const { errors } = (await post(JSON.stringify({ ...fits, constructor: 1 }))).json()
    expect(errors).toEqual([{ at: '/constructor', message: expect.stringContaining('is not known here') }])
  })
})

describe('a body that hides __proto__ below more levels than can be called', () => {
  it('is refused all the same', async () => {
    const deep = 30_000
    const response = await post(`${'['.repeat(deep)}{"__proto__":1}${']'.repeat(deep)}`)
    expect(response.statusCode).toBe(400)
  })
})

describe('an address that cannot be read', () => {
  it.each([
    ['/%', '%'],
    ['/v1/%zz', '%zz'],
    ['/v1/%ff', '%ff'],
    ['/v1/%41/%E0%A4%A', '%E0%A4'],
    [`/v1/${'%ff'.repeat(99)}`, '%ff'.repeat(20)],
  ])('%s cannot be decoded', async (url, broken) => {
    const response = await app.inject(url)
    const cause = `The address holds ${broken}, which stands for no character in UTF-8; a % itself is written %25.`
    expect(response.statusCode).toBe(400)
    expect(response.headers['content-type']).toMatch(/^application\/problem\+json/)
    expect(response.json()).toMatchObject({ detail: cause, errors: [{ at: '', message: cause }] })
    const line = await app.inject(`${url}?errors=text`)
    expect([line.statusCode, line.body]).toEqual([200, `error: ${cause}`])
  })
})
