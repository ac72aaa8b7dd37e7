import { afterAll, describe, expect, it } from 'vitest'
import { buildApp } from '../held-app.ts'

const app = await buildApp()
afterAll(() => app.close())

const fits = { netVolumeL: 3, innerDiameterMm: 26, tuningHz: 105 }
const json = { 'content-type': 'application/json' }

const post = (payload: string | object, headers: Record<string, string> = json, query = '') =>
  app.inject({ method: 'POST', url: `/v1/port${query}`, payload, headers })

const faults = async (body: object): Promise<Record<string, string>> => {
  const response = await post(body)
  expect(response.statusCode).toBe(422)
  const errors: { at: string; message: string }[] = response.json().errors
  return Object.fromEntries(errors.map(({ at, message }) => [at, message]))
}

describe('a body that does not fit', () => {
  it('lists every fault by the pointer of its field, in order, missing and unknown fields too', async () => {
    const told = await faults({
      tuningHz: '3 kg',
      inerDiameterMm: 26,
      count: 1.5,
      ends: { outer: 'flangd', inner: true },
      slot: { widthMm: -75 },
      lengthMm: 0.5,
    })
    expect(told).toEqual({
      '/count': 'must be a whole number, is 1.5',
      '/ends/inner': expect.stringContaining('must be'),
      '/ends/outer': 'must be one of flanged, free, is "flangd"; did you mean "flanged"?',
      '/inerDiameterMm': 'is not known here; did you mean "innerDiameterMm"?',
      '/lengthMm': 'must be at least 1 mm, is 0.5',
      '/netVolumeL': 'is missing (Free air in the box in L)',
      '/slot/heightMm': 'is missing (Inside height of the slot in mm)',
      '/slot/widthMm': 'must be at least 1 mm, is -75',
      '/tuningHz': '"3 kg" is a mass; tuningHz takes a frequency in Hz, such as 105 or "105 Hz"',
    })
    expect(Object.keys(told)).toEqual([...Object.keys(told)].sort())
  })

  it.each([
    ['true is no number', { ...fits, netVolumeL: true }, '/netVolumeL'],
    ['null is no number', { ...fits, netVolumeL: null }, '/netVolumeL'],
    ['a list is no number', { ...fits, netVolumeL: [3] }, '/netVolumeL'],
    ['an object is no number', { ...fits, netVolumeL: { litres: 3 } }, '/netVolumeL'],
    ['a negative text', { ...fits, netVolumeL: '-3 L' }, '/netVolumeL'],
    ['a list of drivers', { ...fits, tubes: {} }, '/tubes'],
    [
      'text in a list of objects',
      { ...fits, tubes: [{ innerDiameterMm: '1 kg' }] },
      '/tubes/0/innerDiameterMm',
    ],
    ['too many items', { ...fits, tubes: Array(21).fill({ innerDiameterMm: 20 }) }, '/tubes'],
    ['a name with a slash and a tilde', { ...fits, 'a/b~c': 1 }, '/a~1b~0c'],
    ['an inherited name', { ...fits, toString: 1 }, '/toString'],
    ['a list', [], ''],
    ['nothing', 'null', ''],
    ['a bare text', '"3"', ''],
  ])('%s', async (_name, body, at) => {
    const response = await post(body)
    expect(response.statusCode).toBe(422)
    expect(response.json().errors.map((fault: { at: string }) => fault.at)).toEqual([at])
  })

  it('tells the first hundred faults and how many more there are', async () => {
    const unknown = Object.fromEntries(Array.from({ length: 150 }, (_, index) => [`field ${index}`, 1]))
    const { errors } = (await post({ ...fits, ...unknown })).json()
    expect(errors).toHaveLength(101)
    expect(errors.at(-1)).toEqual({ at: '', message: 'and 50 more faults' })
  })

  it('says what the calculation itself refuses in the same shape', async () => {
    const response = await post({ netVolumeL: 3 })
    expect(response.statusCode).toBe(422)
    expect(response.json().errors.length).toBeGreaterThan(0)
  })
})

describe('a request that is refused whole', () => {
  const nested = `${'['.repeat(50_000)}${']'.repeat(50_000)}`
  const deep = (depth: number): object => (depth === 0 ? {} : { ends: deep(depth - 1) })

  it('a number beyond the largest is called that, and not null', async () => {
    const { errors } = (await post('{"netVolumeL": 1e999}', json)).json()
    const said = errors.find(({ at }: { at: string }) => at === '/netVolumeL')?.message
    expect(said).toContain('too large a number')
    expect(said).not.toContain('null')
  })

  it.each([
    ['broken JSON', '{"netVolumeL": 3', json, 400],
    ['NaN', '{"netVolumeL": NaN}', json, 400],
    ['Infinity', '{"netVolumeL": -Infinity}', json, 400],
    ['a number beyond the largest', '{"netVolumeL": 1e999}', json, 422],
    ['an empty body', '', json, 400],
    ['a member named __proto__', '{"__proto__": {"netVolumeL": 3}}', json, 400],
    ['10 MB', `{"name": "${'x'.repeat(10_000_000)}"}`, json, 413],
    ['50,000 nested lists', nested, json, 422],
    ['40 nested objects', deep(40), json, 422],
    ['30,000 values', { tubes: Array(30_000).fill(1) }, json, 422],
    ['plain text', JSON.stringify(fits), { 'content-type': 'text/plain' }, 415],
    ['a form', 'netVolumeL=3', { 'content-type': 'application/x-www-form-urlencoded' }, 415],
    ['no media type', JSON.stringify(fits), { 'content-type': '' }, 415],
    ['an unknown form of the answer', fits, { ...json, accept: 'image/png' }, 406],
    ['a refused form of the answer', fits, { ...json, accept: 'application/json;q=0, image/*' }, 406],
  ])('%s', async (_name, payload, headers, status) => {
    const response = await post(payload, headers)
    expect(response.statusCode).toBe(status)
    expect(response.headers['content-type']).toMatch(/^application\/problem\+json/)
    expect(response.json()).toMatchObject({
      type: expect.stringMatching(/^\/problems\//),
      title: expect.any(String),
      status,
      detail: expect.any(String),
      instance: expect.stringMatching(/^urn:uuid:[0-9a-f-]{36}$/),
      errors: expect.any(Array),
    })
    expect(response.body).not.toMatch(/node_modules|\.ts:|\.js:|at Object/)
  })

  it('a POST without any body', async () => {
    const response = await app.inject({ method: 'POST', url: '/v1/port' })
    expect(response.statusCode).toBe(400)
    expect(response.json().errors).toEqual([{ at: '', message: 'The body is empty; send it as JSON.' }])
  })

  it.each([
    ['lists', nested, '/0'.repeat(33)],
    ['objects', JSON.stringify(deep(40)), '/ends'.repeat(33)],
  ])('nested %s are told by the place where it got too deep', async (_name, payload, at) => {
    expect((await post(payload)).json().errors).toEqual([{ at, message: 'lies deeper than 32 levels' }])
  })

  it('names the forms on offer', async () => {
    const { detail } = (await post(fits, { ...json, accept: 'image/png' })).json()
    expect(detail).toContain('json (application/json), text (text/plain), csv (text/csv)')
  })

  it.each(['/v1/port?format=xml', '/v1/port?pick=', '/v1/port?working=perhaps', '/v1/port?formt=text'])(
    'POST %s',
    async (url) => {
      const response = await app.inject({ method: 'POST', url, payload: fits })
      const expected = url.endsWith('pick=') ? 200 : 422
      expect(response.statusCode).toBe(expected)
    },
  )

  it('every kind of problem has a page under its type', async () => {
    const { type } = (await post({})).json()
    const page = await app.inject(type)
    expect(page.statusCode).toBe(200)
    expect(page.headers['content-type']).toMatch(/^text\/html/)
  })
})

describe('methods and paths', () => {
  it.each(['PUT', 'PATCH', 'DELETE'] as const)('%s is answered with what the path takes', async (method) => {
    const response = await app.inject({ method, url: '/v1/port' })
    expect(response.statusCode).toBe(405)
    expect(response.headers['allow']?.split(', ').sort()).toEqual(['GET', 'HEAD', 'OPTIONS', 'POST'])
  })

  it('OPTIONS answers 204, so that a spreadsheet goes on to fetch', async () => {
    const response = await app.inject({ method: 'OPTIONS', url: '/v1/port?netVolumeL=3' })
    expect(response.statusCode).toBe(204)
    expect(response.headers['allow']).toContain('GET')
    expect(response.body).toBe('')
  })

  it('HEAD answers as GET does, without the body', async () => {
    const url = '/v1/port?netVolumeL=3&innerDiameterMm=26&tuningHz=105'
    const [head, got] = await Promise.all([app.inject({ method: 'HEAD', url }), app.inject(url)])
    expect(head.statusCode).toBe(200)
    expect(head.body).toBe('')
    expect(head.headers['content-length']).toBe(got.headers['content-length'])
    expect((await app.inject({ method: 'HEAD', url: '/v1/port' })).statusCode).toBe(422)
  })

  it.each(['/nope', '/v1', '/v1/port/x', '/v1/%00', '/v1/:port', '/problems/', '/v1/(', '//'])(
    '%s is not there',
    async (url) => {
      expect((await app.inject(url)).statusCode).toBe(404)
      expect((await app.inject({ method: 'OPTIONS', url })).statusCode).toBe(404)
    },
  )
})
