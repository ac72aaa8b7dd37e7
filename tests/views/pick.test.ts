import { describe, expect, it } from 'vitest'
import { pick } from '../../src/views/pick.ts'

const answer = {
  verdict: 'review',
  port: { lengthMm: 38.25, count: 2, tuningHz: null, tiny: 1.5e-7, huge: 1e21, onWall: false },
  findings: [{ message: 'the tube is loud', remedies: [] }],
}

describe('one bare value', () => {
  it.each([
    ['verdict', 'review'],
    ['port.lengthMm', '38.25'],
    ['port.count', '2'],
    ['port.onWall', 'false'],
    ['port.tiny', '0.00000015'],
    ['port.huge', '1000000000000000000000'],
    ['findings.0.message', 'the tube is loud'],
  ])('%s', (path, text) => {
    expect(pick(answer, path)).toEqual({ text })
  })

  it('writes a decimal comma on request, also below one', () => {
    expect(pick(answer, 'port.lengthMm', 'comma')).toEqual({ text: '38,25' })
    expect(pick(answer, 'port.tiny', 'comma')).toEqual({ text: '0,00000015' })
  })
})

it('a value that does not exist is no empty text, which a cell would count as 0', () => {
  expect(pick(answer, 'port.tuningHz')).toEqual({ noValue: '"port.tuningHz" has no value here' })
})

describe('no value there', () => {
  it.each([
    [
      'port',
      /is not one value; pick one below it, such as "port\.lengthMm" or "port\.count" or "port\.tuningHz"$/,
    ],
    ['findings.0.remedies', /is empty/],
    ['port.length', /did you mean "port\.lengthMm"\?/],
    ['verdict.x', /nothing is below "verdict"/],
    ['', /is not in the answer$/],
    ['__proto__', /is not in the answer/],
    ['port.constructor', /is not in the answer/],
    ['findings.length', /is not in the answer/],
  ])('%s', (path, message) => {
    expect(pick(answer, path)).toEqual({ fault: expect.stringMatching(message), known: expect.any(String) })
  })
  it('names at most three near names, and all the names apart from them', () => {
    const curves = { splDb: 1, splDa: 1, splDc: 1, splDd: 1 }
    expect(pick({ curves }, 'curves.splDB')).toEqual({
      fault:
        '"curves.splDB" is not in the answer; did you mean "curves.splDb" or "curves.splDa" or "curves.splDc"?',
      known: 'There are curves.splDb, curves.splDa, curves.splDc, curves.splDd',
    })
  })
})
