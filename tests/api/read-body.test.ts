import { Type } from 'typebox'
import { describe, expect, it } from 'vitest'
import { bodyReader } from '../../src/api/read-body.ts'
import { quantity } from '../../src/schema/quantity.ts'
import { ref } from '../../src/schema/shared.ts'
import { Wiring } from '../../src/schema/wiring.ts'

const read = bodyReader(
  Type.Object(
    {
      wiring: ref(Wiring),
      lengthsMm: Type.Optional(Type.Array(quantity('mm', 'Lengths', { minimum: 1 }))),
    },
    { additionalProperties: false },
  ),
)

const faultsOf = async (wiring: unknown) => {
  const result = await read({ wiring })
  return 'faults' in result ? result.faults : []
}

describe('a wiring, which may have several shapes', () => {
  it.each([
    ['main', 'main'],
    [{ series: ['main', { parallel: ['a', 'b'] }] }, { series: ['main', { parallel: ['a', 'b'] }] }],
    [{ series: [{ capacitorUf: '470 nF' }, 'a'] }, { series: [{ capacitorUf: 0.47 }, 'a'] }],
    [
      { inductorMh: '330 uH', resistanceOhm: '0.2 Ω' },
      { inductorMh: 0.33, resistanceOhm: 0.2 },
    ],
  ])('%j is read', async (wiring, expected) => {
    const result = await read({ wiring })
    expect(result).toEqual({ body: { wiring: expected } })
  })

  it.each([
    [7, '/wiring', /is 7; it takes One channel as a tree/],
    ['', '/wiring', /shorter than 1/],
    [{ serial: ['a', 'b'] }, '/wiring', /is an object; it takes One channel as a tree/],
    [{ series: [] }, '/wiring/series', /at least 1/],
    [{ series: ['a', 3] }, '/wiring/series/1', /is 3; it takes/],
    [{ parallel: [{ resistorOhm: -1 }] }, '/wiring/parallel/0/resistorOhm', /at least 0.001 ohm, is -1/],
    [{ parallel: [{ resistorOhm: '3 kg' }] }, '/wiring/parallel/0/resistorOhm', /"3 kg" is a mass/],
    [
      { series: ['a'], parallel: ['b'] },
      '/wiring/parallel',
      /^is given beside series; one object takes one of the two$/,
    ],
    [
      { inductorMh: 1, resistanceOhm: 1, capacitorUf: 1 },
      '/wiring/capacitorUf',
      /beside inductorMh and resistanceOhm;/,
    ],
    [{ inductorMh: 1, resistence: 2 }, '/wiring/resistence', /is not known here/],
  ])('%j tells one fault', async (wiring, at, message) => {
    expect(await faultsOf(wiring)).toEqual([{ at, message: expect.stringMatching(message) }])
  })

  it('nested as deep as may be, it is still read at once', async () => {
    let wiring: unknown = 'main'
    for (let depth = 0; depth < 13; depth++) wiring = { series: [wiring], parallel: [wiring] }
    expect((await faultsOf(wiring)).length).toBeGreaterThan(0)
  })
})

describe('a list of quantities', () => {
  it('reads each of its texts', async () => {
    expect(await read({ wiring: 'a', lengthsMm: [3, '2 cm', '1 in'] })).toEqual({
      body: { wiring: 'a', lengthsMm: [3, 20, 25.4] },
    })
  })

  it('names the one that is wrong', async () => {
    const result = await read({ wiring: 'a', lengthsMm: [3, '2 V', 0] })
    expect(result).toEqual({
      faults: [
        { at: '/lengthsMm/1', message: '"2 V" is a voltage; lengthsMm takes a length in mm' },
        { at: '/lengthsMm/2', message: 'must be at least 1 mm, is 0' },
      ],
    })
  })
})
