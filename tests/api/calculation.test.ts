import { Type } from 'typebox'
import { afterAll, describe, expect, it } from 'vitest'
import { calculation } from '../../src/api/calculation.ts'
import { buildApp } from '../../src/app.ts'
import type { Outcome, Refusal } from '../../src/core/outcome.ts'
import type { Finding } from '../../src/schema/frame.ts'
import { outputOf, quantity } from '../../src/schema/quantity.ts'
import { share } from '../../src/schema/shared.ts'

/** A calculation for these tests alone: how far light goes. */
const Flight = share(
  'Flight',
  Type.Object({ timeS: quantity('s', 'Time of flight', { minimum: 0 }) }, { additionalProperties: false }),
)
const sections = { way: Type.Object({ lengthM: outputOf('m', 'Way of light') }) }
const LIGHT_M_PER_S = 299_792_458

function flight({ timeS }: { timeS: number }): Outcome<{ way: { lengthM: number } }> | Refusal {
  if (timeS > 10) return { faults: [{ at: '/timeS', message: 'is too long a flight' }] }
  const finding = { message: 'look', at: '/timeS/start', remedies: ['Wait.'] }
  const late: Finding = { ...finding, code: 'late', severity: 'blocker', message: 'it gets late' }
  return {
    sections: { way: { lengthM: LIGHT_M_PER_S * timeS } },
    findings: [
      { ...finding, code: 'small', severity: 'note' },
      { ...finding, code: 'big', severity: 'warning' },
      ...(timeS > 5 ? [late, { ...late, code: 'later', message: 'It gets later.' }] : []),
    ],
    assumptions: [],
    cautions: ['Do not look into it.', 'Do not look into it.'],
    working: [
      { quantity: 'way', formula: 'c * t', with: { c: LIGHT_M_PER_S, t: timeS }, unit: 'm', source: 'SI' },
    ],
  }
}

const given = {
  path: '/v1/test-flight',
  operationId: 'testFlight',
  summary: 'Way of light',
  description: 'For the tests alone.',
  body: Flight,
  sections,
  example: { timeS: 1 },
  get: true,
  compute: flight,
  mainTable: 'values',
  answer: ({ way }: { way: { lengthM: number } }) => `Light goes ${way.lengthM} m.`,
} as const

const app = await buildApp()
await app.register(calculation(given))
afterAll(() => app.close())

describe('one calculation', () => {
  it('comes behind the frame: verdict of the worst finding, that one first, every caution once', async () => {
    const response = await app.inject({
      method: 'POST',
      url: '/v1/test-flight',
      payload: { timeS: '500 ms' },
    })
    expect(response.json()).toEqual({
      answer: 'Light goes 149896229 m.',
      verdict: 'review',
      findings: [expect.objectContaining({ code: 'big' }), expect.objectContaining({ code: 'small' })],
      assumptions: [],
      cautions: ['Do not look into it.'],
      way: { lengthM: 149_896_229 },
    })
  })

  it('says first that it is blocked, by the message of the first blocker', async () => {
    const { answer, verdict } = (await app.inject('/v1/test-flight?timeS=6')).json()
    expect(verdict).toBe('blocked')
    expect(answer).toBe('Do not build it like this: it gets late. Light goes 1798754748 m.')
    const text = await app.inject('/v1/test-flight?timeS=6&format=text')
    expect(text.body).toBe(answer)
  })

  it('points its findings at what the request really has', async () => {
    const { findings } = (await app.inject('/v1/test-flight?timeS=6')).json()
    expect(findings.map(({ at }: Finding) => at)).toEqual(Array(4).fill('/timeS'))
  })

  it('shows its working on request, evaluated from the printed formula', async () => {
    const response = await app.inject('/v1/test-flight?timeS=2&working=true')
    expect(response.json().working).toEqual([
      {
        quantity: 'way',
        formula: 'c * t',
        with: { c: LIGHT_M_PER_S, t: 2 },
        result: 599_584_916,
        unit: 'm',
        source: 'SI',
      },
    ])
  })

  it('can refuse what it cannot compute', async () => {
    const response = await app.inject('/v1/test-flight?timeS=11')
    expect(response.statusCode).toBe(422)
    expect(response.json().errors).toEqual([{ at: '/timeS', message: 'is too long a flight' }])
  })

  it('does not compile when the computation does not fit its schemas', () => {
    const wrong = [
      // @ts-expect-error the body has no such field
      () => calculation({ ...given, compute: (body: { wayM: number }) => flight({ timeS: body.wayM }) }),
      // @ts-expect-error the sections are others
      () => calculation({ ...given, sections: { time: Type.Number() } }),
      // @ts-expect-error the example is no body
      () => calculation({ ...given, example: { timeS: 'one' } }),
    ]
    expect(wrong).toHaveLength(3)
  })
})
