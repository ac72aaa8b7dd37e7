import type { TSchema } from 'typebox'
import { afterAll, describe, expect, it } from 'vitest'
import { queryBody } from '../../src/api/query-body.ts'
import { Design } from '../../src/schema/design.ts'
import { buildApp } from '../held-app.ts'

const design: TSchema = Design

describe('dotted names stand for a nested body', () => {
  it('by the schema: lists, whole numbers, true and false, null, text left for the reader of quantities', () => {
    const { body, faults } = queryBody(design, {
      'drivers.0.id': '12',
      'drivers.0.count': '2',
      'drivers.0.sharesBox': 'false',
      'drivers.0.parameters.fsHz': '124 Hz',
      'drivers.0.parameters.qms': '3.2',
      'box.kind': 'closed',
      'box.leakageQ': 'none',
      'box.portQ': '40',
      'workshop.holeSawsMm': ['22', '32'],
    })
    expect(faults).toEqual([])
    expect(body).toEqual({
      drivers: [{ id: '12', count: 2, sharesBox: false, parameters: { fsHz: '124 Hz', qms: 3.2 } }],
      box: { kind: 'closed', leakageQ: null, portQ: 40 },
      workshop: { holeSawsMm: ['22', '32'] },
    })
  })

  it.each([
    [{ wiring: 'main' }, 'main'],
    [{ 'wiring.series': 'main' }, { series: ['main'] }],
    [{ 'wiring.parallel': ['main', 'main'] }, { parallel: ['main', 'main'] }],
    [
      { 'wiring.series.0.parallel': ['a', 'b'], 'wiring.series.1.resistorOhm': '4.7 ohm' },
      { series: [{ parallel: ['a', 'b'] }, { resistorOhm: '4.7 ohm' }] },
    ],
  ])('the wiring as a tree: %j', (query, wiring) => {
    expect(queryBody(design, query)).toEqual({ body: { wiring }, faults: [] })
  })

  it('takes a name without a value as not given, as an empty field of a form', () => {
    expect(queryBody(design, { name: '', 'box.kind': 'closed' }).body).toEqual({ box: { kind: 'closed' } })
  })

  it.each([
    [{ boxes: ['1', '2'] }, '/boxes', 'is given 2 times'],
    [{ 'drivers.1.id': 'main' }, '/drivers', /0 is missing/],
    [{ 'drivers.x.id': 'main' }, '/drivers', /0 is missing/],
    [{ box: 'closed', 'box.kind': 'closed' }, '/box', /both as one value and by the names below/],
    [{ [Array(40).fill('a').join('.')]: '1' }, expect.any(String), 'has too many dots'],
  ])('refuses %j', (query, at, message) => {
    const { faults } = queryBody(design, query)
    expect(faults).toEqual([{ at, message: expect.stringMatching(message) }])
  })

  it('makes nothing of the names of prototypes', () => {
    queryBody(design, {
      '__proto__.polluted': '1',
      'constructor.prototype.polluted': '1',
      'box.__proto__.x': '1',
    })
    expect('polluted' in {}).toBe(false)
  })
})

describe('a cell and a form', async () => {
  const app = await buildApp()
  afterAll(() => app.close())
  const base = '/v1/port?netVolumeL=3&innerDiameterMm=26&tuningHz=105'

  it('gets one bare number without a line end, with the decimal mark it asked for', async () => {
    const point = await app.inject(`${base}&pick=port.lengthMm`)
    const comma = await app.inject(`${base}&pick=port.lengthMm&decimal=comma`)
    expect(point.headers['content-type']).toBe('text/plain; charset=utf-8')
    expect(point.body).toMatch(/^\d+\.\d+$/)
    expect(comma.body).toBe(point.body.replace('.', ','))
  })

  it('reads text with its own unit, as typed into an address', async () => {
    const inches = await app.inject(
      '/v1/port?netVolumeL=3000+ml&innerDiameterMm=1+1/32%22&tuningHz=0.105kHz&pick=port.areaCm2',
    )
    // area of a circle of 1 1/32 in
    expect(Number(inches.body)).toBeCloseTo((Math.PI / 4) * (2.54 * (33 / 32)) ** 2, 9)
  })

  it('gets an error as one line with status 200 when it asks for that', async () => {
    const response = await app.inject('/v1/port?netVolumeL=3+kg&errors=text&pick=port.lengthMm')
    expect(response.statusCode).toBe(200)
    expect(response.body).toMatch(/^error: .*\/netVolumeL "3 kg" is a mass[^\n]*$/)
    expect((await app.inject('/v1/port?netVolumeL=3+kg')).statusCode).toBe(422)
    // A question mark may stand within a query (RFC 3986, section 3.4).
    const odd = await app.inject('/v1/port?netVolumeL=what?&errors=text&pick=port.lengthMm')
    expect([odd.statusCode, odd.body.slice(0, 6)]).toEqual([200, 'error:'])
  })

  it('may write decimal commas when it says so, with a unit or without, in quantities and plain numbers', async () => {
    const query = 'innerDiameterMm=26,5&tuningHz=0,105+kHz&count=1&pick=port.areaCm2&decimal=comma'
    const comma = await app.inject(`/v1/port?netVolumeL=2,2+L&${query}`)
    const point = await app.inject(
      '/v1/port?netVolumeL=2.2&innerDiameterMm=26.5&tuningHz=105&pick=port.areaCm2',
    )
    expect(point.body).toMatch(/^\d\.\d+$/)
    expect(comma.body).toBe(point.body.replace('.', ','))
    expect(queryBody(design, { 'box.portQ': '40,5', 'drivers.0.parameters.qms': '-,5' }, 'comma')).toEqual({
      body: { box: { portQ: 40.5 }, drivers: [{ parameters: { qms: -0.5 } }] },
      faults: [],
    })
  })

  it.each([
    ['netVolumeL=2,2', /\/netVolumeL "2,2" has a comma; write a decimal point.*decimal=comma/],
    ['netVolumeL=1.220,5&decimal=comma', /\/netVolumeL "1\.220,5" has a comma; write one decimal comma/],
    ['netVolumeL=1,220,5&decimal=comma', /\/netVolumeL "1,220,5" has a comma; write one decimal comma/],
    [
      'netVolumeL=2&count=1,5',
      /\/count must be a whole number, is "1,5"; write 1\.5.* in a query or a sheet \?decimal=comma/,
    ],
  ])('is told of a comma: %s', async (query, told) => {
    expect((await app.inject(`/v1/port?${query}&errors=text`)).body).toMatch(told)
  })

  it('that came as JSON is told what JSON takes', async () => {
    const box = { kind: 'closed', netVolumeL: '2,2 L', leakageQ: '7,5' }
    const body = { driver: { fsHz: 90, qms: 3, qes: 0.5, vasL: 2, sdCm2: 50, reOhm: 4 }, box }
    const post = (url: string, payload: object) => app.inject({ method: 'POST', url, payload })
    const { errors } = (await post('/v1/box-tuning', body)).json()
    expect(errors).toEqual([
      { at: '/box/leakageQ', message: expect.stringMatching(/is "7,5"; write 7\.5, in JSON without quotes/) },
      {
        at: '/box/netVolumeL',
        message: expect.stringMatching(/such as [\d.]+ or "[\d.]+ L"; .*\?decimal=comma/),
      },
    ])
    // What the two faults offer works.
    const mended = { ...body, box: { ...box, leakageQ: 7.5 } }
    expect((await post('/v1/box-tuning?decimal=comma', mended)).statusCode).toBe(200)
  })

  it('gets no empty text for a value that does not exist, but the reason', async () => {
    // Even a mere hole of 20 mm tunes 50 litres to less than 300 Hz.
    const nothing = '/v1/port?netVolumeL=50&innerDiameterMm=20&tuningHz=300'
    const whole = (await app.inject(nothing)).json()
    expect(whole.port.lengthMm).toBeNull()
    const refused = await app.inject(`${nothing}&pick=port.lengthMm`)
    const message = `"port.lengthMm" has no value here: ${whole.findings[0].message}`
    expect(refused.statusCode).toBe(422)
    expect(refused.json()).toMatchObject({
      type: '/problems/unknown-pick',
      errors: [{ at: '/pick', message }],
    })
    const line = await app.inject(`${nothing}&pick=port.lengthMm&errors=text`)
    expect([line.statusCode, line.body]).toEqual([200, `error: /pick ${message}`])
  })

  it('gets a short line for a wrong pick', async () => {
    const line = await app.inject(`${base}&pick=port.lengthmm&errors=text`)
    expect(line.statusCode).toBe(200)
    expect(line.body).toMatch(
      /^error: \/pick "port\.lengthmm" is not in the answer; did you mean "port\.lengthMm"/,
    )
    expect(line.body.length).toBeLessThan(200)
  })

  it('is told the nearest name for a pick or a field that does not exist', async () => {
    const pick = await app.inject(`${base}&pick=port.lengthmm`)
    expect(pick.statusCode).toBe(422)
    expect(pick.json().detail).toContain('did you mean "port.lengthMm"')
    const field = await app.inject(`${base}&innerDiametreMm=3`)
    expect(field.json().errors).toEqual([
      { at: '/innerDiametreMm', message: 'is not known here; did you mean "innerDiameterMm"?' },
    ])
  })

  it('can ask for the sentence or the JSON, in the query before Accept', async () => {
    const accept = { accept: 'application/json' }
    const text = await app.inject({ url: `${base}&format=text`, headers: accept })
    expect(text.headers['content-type']).toBe('text/plain; charset=utf-8')
    expect(text.headers['vary']).toBe('accept')
    const json = await app.inject({ url: `${base}&format=json`, headers: { accept: 'text/plain' } })
    expect(json.json().answer).toBe(text.body)
  })
})
