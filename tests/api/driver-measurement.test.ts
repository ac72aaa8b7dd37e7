import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { barePaperCone } from '../../src/api/driver-measurement/example.ts'
import { buildApp } from '../held-app.ts'

const URL = '/v1/driver-measurement'
let app: Awaited<ReturnType<typeof buildApp>>
beforeAll(async () => {
  app = await buildApp()
})
afterAll(() => app.close())

const post = (payload: object, url = URL) => app.inject({ method: 'POST', url, payload })

describe('/v1/driver-measurement', () => {
  it('answers its example in a sentence, with the working evaluated to the same figures', async () => {
    const response = await post(barePaperCone, `${URL}?working=true`)
    expect(response.statusCode).toBe(200)
    const { answer, verdict, working, measured } = response.json()
    // Simulated with fs 124 Hz, Qts 0.47, Vas 0.92 L, Re 3.4 ohm.
    expect(answer).toMatch(
      /^left: resonance 124 Hz .* total Q 0\.4[67]\d .* Vas 0\.9\d\d L .* resistance 3\.\d+ ohm/,
    )
    expect(verdict).toBe('ready')
    const result = (name: string) => working.find((row: { quantity: string }) => row.quantity === name).result
    const { qts, blTm, mmsG } = measured[0].parameters
    expect(result('total Q of left')).toBeCloseTo(qts, 9)
    expect(result('motor strength of left')).toBeCloseTo(blTm, 9)
    expect(result('moving mass of left')).toBeCloseTo(mmsG, 6)
  })

  it('gives parameters that another calculation takes as they are', async () => {
    const { measured } = (await post(barePaperCone)).json()
    const box = { kind: 'closed', netVolumeL: 1.2 }
    const response = await post({ driver: measured[0].parameters, box }, '/v1/box-tuning')
    expect(response.statusCode).toBe(200)
    // Small 1972: Qtc = Qts√(1 + Vas/V) without losses, a little less with them.
    const { qts, vasL } = measured[0].parameters
    const qtc = qts * Math.sqrt(1 + vasL / 1.2)
    expect(response.json().tuning.qtc / qtc).toBeGreaterThan(0.85)
    expect(response.json().tuning.qtc / qtc).toBeLessThan(1.01)
  })

  it('takes the same sweep as text with decimal commas', async () => {
    const [driver] = barePaperCone.drivers
    const { frequencyHz = [], impedanceOhm = [] } = driver?.freeAir ?? {}
    const rows = frequencyHz.map((hz, i) => `${hz};${String(impedanceOhm[i]).replace('.', ',')}`)
    const csv = ['Hz;ohm', ...rows].join('\n')
    const other = { ...barePaperCone, drivers: [{ ...driver, freeAir: { csv } }] }
    const [first, second] = [(await post(barePaperCone)).json(), (await post(other)).json()]
    expect(second.measured[0].parameters).toEqual(first.measured[0].parameters)
  })

  it('refuses with 422 at the place of the fault', async () => {
    const [driver] = barePaperCone.drivers
    const frequencyHz = driver?.freeAir?.frequencyHz?.map((hz) => hz / 1000)
    const payload = { drivers: [{ ...driver, freeAir: { ...driver?.freeAir, frequencyHz } }] }
    const response = await post(payload)
    expect(response.statusCode).toBe(422)
    expect(response.json().errors).toEqual([
      { at: '/drivers/0/freeAir/frequencyHz', message: expect.stringContaining('kilohertz') },
    ])
  })

  it('refuses a negative and a zero impedance', async () => {
    const freeAir = { frequencyHz: [100, 200], impedanceOhm: [-4, 0] }
    const response = await post({ drivers: [{ id: 'a', freeAir }] })
    expect(response.statusCode).toBe(422)
    expect(response.json().errors.map(({ at }: { at: string }) => at)).toEqual([
      '/drivers/0/freeAir/impedanceOhm/0',
      '/drivers/0/freeAir/impedanceOhm/1',
    ])
  })

  it('tells how to begin where nothing was measured', async () => {
    const { answer, plan, measured } = (await post({ drivers: [{ id: 'mine' }] })).json()
    expect(measured).toEqual([])
    expect(answer).toMatch(/^Measure mine with \d+.* ohm in series and at most 0\.\d+ V/)
    expect(plan[0].steps.length).toBeGreaterThan(5)
  })

  it('names the pair where several were measured', async () => {
    const [driver] = barePaperCone.drivers
    const drivers = [driver, { ...driver, id: 'right' }]
    const { answer, pairs } = (await post({ drivers })).json()
    expect(answer).toBe('2 drivers measured. Best together: left with right (a pair).')
    expect(pairs).toMatchObject([{ score: 0, chosen: true }])
  })

  it('gives the figures as a table', async () => {
    const response = await post(barePaperCone, `${URL}?format=csv`)
    expect(response.statusCode).toBe(200)
    expect(response.body).toMatch(/fsHz/)
  })
})
