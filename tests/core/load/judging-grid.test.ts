import { describe, expect, it } from 'vitest'
import { loadInBox } from '../../../src/core/design/load-in-box.ts'
import { judgingGrid } from '../../../src/core/load/judging-grid.ts'
import type { Wiring } from '../../../src/schema/wiring.ts'

const base = Float64Array.of(10, 100, 1000, 10_000)
const amplifier = { channels: 2, output: 'bridge', supplyVoltageV: 12, minimumLoadOhm: 4 } as const

it('a wiring without coil and capacitor is judged on the grid as it is', () => {
  expect(judgingGrid(base, 'm')).toBe(base)
  expect(judgingGrid(base, { series: ['m', { capacitorUf: 10 }] })).toBe(base)
})

it('puts the resonance of coil and capacitor in, and keeps the order', () => {
  const grid = judgingGrid(base, { parallel: ['m', { series: [{ inductorMh: 10 }, { capacitorUf: 1 }] }] })
  // 1/(2π√(10 mH · 1 µF)) = 1591.55 Hz.
  expect(Array.from(grid)).toContainEqual(expect.closeTo(1591.549, 3))
  expect(Array.from(grid)).toEqual([...grid].sort((a, b) => a - b))
})

const run = (wiring: Wiring, reOhm = 6) => {
  const outcome = loadInBox({ drivers: [{ id: 'm', parameters: { reOhm } }], wiring, amplifier })
  if ('faults' in outcome) throw new Error(JSON.stringify(outcome.faults))
  return { ...outcome.sections.load, codes: outcome.findings.map(({ code }) => code) }
}

describe('a notch between two points of the grid does not hide', () => {
  it('an ideal coil and capacitor across the driver short the amplifier at their resonance', () => {
    const load = run({ parallel: ['m', { series: [{ inductorMh: 50 }, { capacitorUf: 0.2 }] }] })
    expect(load.minimumOhm).toBeLessThan(0.1)
    expect(load.mayDrive).toBe(false)
    expect(load.codes).toEqual(
      expect.arrayContaining(['load-shorts-amplifier', 'load-below-amplifier-minimum']),
    )
  })
  it('a lossy one leaves its resistance beside the driver', () => {
    const load = run({
      parallel: ['m', { series: [{ inductorMh: 10, resistanceOhm: 0.5 }, { capacitorUf: 1 }] }],
    })
    // At 1591.55 Hz only 0.5 ohm are left in the branch: 0.5 ∥ 6.
    expect(load.minimumOhm).toBeCloseTo((0.5 * 6) / 6.5, 2)
    expect(load.minimumAtHz).toBeCloseTo(1591.549, 1)
  })
})

it('a load as good as open is a blocker', () => {
  expect(run({ series: ['m', { resistorOhm: 1e6 }] }).codes).toContain('load-open')
  expect(run({ series: ['m', { resistorOhm: 400 }] }).codes).not.toContain('load-open')
})
