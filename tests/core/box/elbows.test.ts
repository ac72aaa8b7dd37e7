import { describe, expect, it } from 'vitest'
import { shelfPair } from '../../../src/api/design-check/example.ts'
import { reachMm, straightMm } from '../../../src/core/box/elbows.ts'
import { port } from '../../../src/core/box/port.ts'
import { designCheck } from '../../../src/core/design/design-check.ts'

it('a quarter bend of 40 mm radius takes 62.8 mm of the length', () => {
  // π/2 · 40, geometry.
  expect(straightMm({ innerDiameterMm: 26, elbows: { count: 1, radiusMm: 40 } }, 180)).toBeCloseTo(
    180 - 20 * Math.PI,
    9,
  )
})

it('a straight tube reaches as far as it is long, a bent one turns behind the panel', () => {
  expect(reachMm({ innerDiameterMm: 26, outerDiameterMm: 32 }, 180, 12)).toBe(180)
  expect(
    reachMm({ innerDiameterMm: 26, outerDiameterMm: 32, elbows: { count: 1, radiusMm: 40 } }, 180, 12),
  ).toBe(12 + 40 + 16)
})

it('bends longer than the port are a blocker', () => {
  const outcome = port({ netVolumeL: 3, innerDiameterMm: 26, tuningHz: 95, elbows: { count: 2 } })
  if ('faults' in outcome) throw new Error('refused')
  // Two bends of 39 mm radius are 122 mm; the port is 40.
  expect(outcome.findings.map(({ code }) => code)).toContain('bends-longer-than-port')
})

describe('a port too long for its box', () => {
  const long = { ...shelfPair, port: { ...shelfPair.port, tuningHz: 55 } }
  const codes = (design: typeof shelfPair) => {
    const outcome = designCheck(design)
    if ('faults' in outcome) throw new Error('refused')
    return outcome.findings.filter(({ severity }) => severity === 'blocker').map(({ code }) => code)
  }
  it('does not go in straight, but with a bend it does', () => {
    expect(codes(long)).toContain('tube-hits-back')
    expect(codes({ ...long, port: { ...long.port, elbows: { count: 1 } } })).toEqual([])
  })
})
