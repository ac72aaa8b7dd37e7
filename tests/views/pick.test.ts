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
    ['port.tuningHz', ''],
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

describe('no value there', () => {
  it.each([
    ['port', /is not one value; below it are port\.lengthMm, port\.count/],
    ['findings.0.remedies', /is empty/],
    ['port.length', /did you mean "port\.lengthMm"\?/],
    ['verdict.x', /nothing is below "verdict"/],
    ['', /is not in the answer; .*There are verdict, port, findings/],
    ['__proto__', /is not in the answer/],
    ['port.constructor', /is not in the answer/],
    ['findings.length', /is not in the answer/],
  ])('%s', (path, message) => {
    expect(pick(answer, path)).toEqual({ fault: expect.stringMatching(message) })
  })
})
