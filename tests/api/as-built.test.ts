import { afterAll, describe, expect, it } from 'vitest'
import { asBuiltAnswer } from '../../src/api/as-built/answer.ts'
import { leakyPair } from '../../src/api/as-built/example.ts'
import { contractOf } from '../../src/api/contract.ts'
import { asBuilt } from '../../src/core/as-built/as-built.ts'
import { isRefusal } from '../../src/core/outcome.ts'
import type { AsBuiltRequest } from '../../src/schema/as-built.ts'
import { buildApp } from '../held-app.ts'
import { contractChecks } from './contract-checks.ts'

const app = await buildApp()
await app.ready()
afterAll(() => app.close())
const faultsOf = contractChecks(contractOf(app))

const PATH = '/v1/as-built'
const post = (payload: object) => app.inject({ method: 'POST', url: PATH, payload })
const withSweep = (sweep: object) => ({ design: leakyPair.design, measured: { sweep } })

const { frequencyHz = [], impedanceOhm = [], phaseDeg = [] } = leakyPair.measured.sweep

interface Answer {
  verdict: string
  findings: { code: string; at: string; message: string }[]
  built: { box: string; tuningHz: { value: number } }
  working: { quantity: string; result: number }[]
  secondOpinion: { alpha: number }
}

describe('a finished box over HTTP', () => {
  it('is answered as the contract says, findings first', async () => {
    const response = await post(leakyPair)
    expect(response.statusCode).toBe(200)
    expect(faultsOf(PATH, 'post', response)).toEqual([])
    const answer = response.json<Answer>()
    expect(answer.verdict).toBe('review')
    expect(answer.findings.map(({ code }) => code)).toEqual(['as-built-leak', 'as-built-tube-long'])
    expect(answer.built.box).toBe('left')
    expect(answer.findings[0]?.message).toMatch(/^The box leaks: the Q of its leak \(QL\) is \d/)
  })

  it('reads the sweep as text with decimal commas just as well', async () => {
    const comma = (value: number) => String(value).replace('.', ',')
    const lines = frequencyHz.map((hz, i) => [hz, impedanceOhm[i]!, phaseDeg[i]!].map(comma).join(';'))
    const response = await post(withSweep({ csv: ['Hz;ohm;deg', ...lines].join('\n') }))
    const both = [response, await post(leakyPair)].map((one) => one.json<Answer>().built.tuningHz)
    expect(both[0]).toEqual(both[1])
  })

  it('prints a working that comes to the same', async () => {
    const response = await app.inject({ method: 'POST', url: `${PATH}?working=true`, payload: leakyPair })
    const { working, secondOpinion } = response.json<Answer>()
    expect(working[0]!.result).toBeCloseTo(secondOpinion.alpha, 10)
    // What the port should be: c² S/((2π fb)² V) less both ends, 0.8217 and 0.6133 radii; on about the planned 2.5 L.
    const port = working.find(({ quantity }) => quantity.startsWith('length of the port'))!
    const effective = (1e3 * 343.994 ** 2 * Math.PI * 0.013 ** 2) / ((2 * Math.PI * 105) ** 2 * 2.513e-3)
    expect(Math.abs(port.result - (effective - 1.435 * 13))).toBeLessThan(0.5)
  })

  it.each([
    ['swapped columns', { frequencyHz: impedanceOhm, impedanceOhm: frequencyHz }, /swapped|order/],
    ['kilohertz', { frequencyHz: frequencyHz.map((hz) => hz / 1000), impedanceOhm }, /kilohertz/],
    [
      'a negative impedance',
      { frequencyHz, impedanceOhm: impedanceOhm.map((x, i) => (i === 5 ? -x : x)) },
      /./,
    ],
    ['columns of unequal length', { frequencyHz, impedanceOhm: impedanceOhm.slice(1) }, /one for each/],
    ['no readings', {}, /no readings/],
    [
      'too few about the peaks',
      {
        frequencyHz: frequencyHz.filter((_, i) => i % 4 === 0),
        impedanceOhm: impedanceOhm.filter((_, i) => i % 4 === 0),
      },
      /at least 12/,
    ],
  ])('refuses %s and says what is meant', async (_, sweep, message) => {
    const response = await post(withSweep(sweep))
    expect(response.statusCode).toBe(422)
    const { errors } = response.json<{ errors: { at: string; message: string }[] }>()
    expect(errors[0]!.at).toMatch(/^\/measured\/sweep/)
    expect(errors.map((error) => error.message).join(' ')).toMatch(message)
  })

  it('lists faults of plan and sweep together, each with its place', async () => {
    const { port: _, ...design } = leakyPair.design
    const response = await post({ design, measured: { sweep: { frequencyHz, impedanceOhm: [5] } } })
    expect(response.statusCode).toBe(422)
    const { errors } = response.json<{ errors: { at: string }[] }>()
    expect(errors.map(({ at }) => at)).toEqual(['/design/port', '/measured/sweep/impedanceOhm'])
  })
})

function answerTo(request: AsBuiltRequest): string {
  const result = asBuilt(request)
  if (isRefusal(result)) throw new Error(JSON.stringify(result.faults))
  return asBuiltAnswer(result.sections, result.findings)
}

describe('the sentences about a finished box', () => {
  it('name the figures, then the first cause, then how many more', () => {
    // The readings of the example are of a box tuned to 99 Hz with QL 4, QA 50 and QP 60: all in all Q 3.5.
    expect(answerTo(leakyPair)).toMatch(
      /^The finished box is tuned to 99\.\d Hz, acts as 2\.5\d L, loses as much as Q 3\.\d\. The box leaks: the Q of its leak \(QL\) is [34]\.\d instead of 10 .* 1 more cause in the findings\.$/,
    )
  })

  it('are only what is wrong with the sweep when nothing can be told from it', () => {
    const flat = { frequencyHz, impedanceOhm: frequencyHz.map(() => 7) }
    expect(answerTo({ ...leakyPair, measured: { sweep: flat } })).toMatch(/^The sweep does not show/)
  })
})
