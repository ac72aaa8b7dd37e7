import { describe, expect, it } from 'vitest'
import { boxTuning } from '../../src/core/box/box-tuning.ts'
import { isRefusal } from '../../src/core/outcome.ts'
import { mmApart, saidApart } from '../../src/core/say-apart.ts'
import type { BoxTuningRequest } from '../../src/schema/box-tuning.ts'

describe('a value and the limit that it is held against', () => {
  it.each([
    [4.3, 2.2, ['4.3 mm', '2.2 mm']],
    [2.53, 2.5, ['2.53 mm', '2.5 mm']],
    [2.503, 2.5, ['2.503 mm', '2.5 mm']],
    [2.96, 3.04, ['2.96 mm', '3.04 mm']],
    // Equal ones, and what no rule tells apart, stay as they are usually said.
    [2.5, 2.5, ['2.5 mm', '2.5 mm']],
    [2.500001, 2.5, ['2.5 mm', '2.5 mm']],
  ])('%d of %d mm', (value, limit, said) => {
    expect(mmApart(value, limit)).toEqual(said)
  })

  it.each([
    [3.11, 3.2, 'ohm', ['3.11 ohm', '3.20 ohm']],
    [3.198, 3.2, 'ohm', ['3.198 ohm', '3.200 ohm']],
    [105.04, 105, 'Hz', ['105.04 Hz', '105.00 Hz']],
  ])('%d of %d %s', (value, limit, unit, said) => {
    expect(saidApart(value, limit, unit)).toEqual(said)
  })
})

it('a cone that moves a hair too far is not told to move as far as it may', () => {
  const request: BoxTuningRequest = {
    driver: { fsHz: 95, qms: 3.4, qes: 0.55, vasL: 2.1, sdCm2: 52, reOhm: 3.6, xmaxMm: 2 },
    box: { kind: 'closed', netVolumeL: 2 },
  }
  const asked = (xmaxMm: number) => {
    const outcome = boxTuning({ ...request, driver: { ...request.driver, xmaxMm } })
    if (isRefusal(outcome)) throw new Error(JSON.stringify(outcome.faults))
    return outcome.findings.find(({ code }) => code.startsWith('cone-leaves-range'))
  }
  const moves = asked(0.2)?.value ?? Number.NaN
  const [, told, clean] =
    /move (?:the cone )?([\d.]+) mm.* clean up to ([\d.]+) mm/.exec(asked(moves - 0.006)?.message ?? '') ?? []
  expect(Number(told)).toBeGreaterThan(Number(clean))
  // Both are the figures themselves, to as many digits as are told.
  expect(Math.abs(Number(told) - moves)).toBeLessThan(0.0051)
  expect(Math.abs(Number(clean) - (moves - 0.006))).toBeLessThan(0.0051)
})
