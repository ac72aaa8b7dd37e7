import { describe, expect, test } from 'vitest'
import { loadImpedance } from '../../../src/core/load/load-impedance.ts'
import { midRangeIndex } from '../../../src/core/load/shares.ts'
import { isRefusal } from '../../../src/core/outcome.ts'
import type { Wiring } from '../../../src/schema/wiring.ts'

const GRID = Float64Array.from({ length: 240 }, (_, i) => 10 * 2000 ** (i / 239))

function sharesOf(wiring: Wiring) {
  const drivers = [
    { id: 'woofer', parameters: { reOhm: 6 } },
    { id: 'tweeter', parameters: { reOhm: 6 }, sharesBox: false },
  ]
  const result = loadImpedance({ drivers, wiring }, new Map(), GRID)
  if (isRefusal(result)) throw new Error('refused')
  return new Map(result.sections.shares.map((share) => [share.driver, share]))
}

describe('shares behind a crossover', () => {
  // First order at 3 kHz into 6 ohm: C = 1/(2π f R) = 8.84 uF, L = R/(2π f) = 0.318 mH.
  const woofer: Wiring = { series: [{ inductorMh: 0.318 }, 'woofer'] }

  test('each driver is told its share in its own band', () => {
    const shares = sharesOf({ parallel: [woofer, { series: [{ capacitorUf: 8.84 }, 'tweeter'] }] })
    // The powers of the branches are 1/(1 + x²) and x²/(1 + x²) of the whole, x = f/3 kHz.
    expect(shares.get('woofer')?.powerShare).toBeGreaterThan(0.97)
    expect(shares.get('woofer')?.atHz).toBeLessThan(3000)
    expect(shares.get('tweeter')?.powerShare).toBeGreaterThan(0.95)
    expect(shares.get('tweeter')?.atHz).toBeGreaterThan(3000)
    expect(shares.get('woofer')?.voltageShare).toBeGreaterThan(0.97)
  })

  test('a pad shows in the level of the tweeter', () => {
    // 6 dB at 6 ohm: 2.99 ohm in series, 6.04 ohm across; half the voltage and a quarter of the power are left.
    const padded: Wiring = {
      series: [
        { capacitorUf: 8.84 },
        { resistorOhm: 2.993 },
        { parallel: [{ resistorOhm: 6.0286 }, 'tweeter'] },
      ],
    }
    const tweeter = sharesOf({ parallel: [woofer, padded] }).get('tweeter')
    expect(tweeter?.powerShare).toBeGreaterThan(0.23)
    expect(tweeter?.powerShare).toBeLessThan(0.2512)
    expect(tweeter?.levelDb).toBeLessThan(-5.9)
    expect(tweeter?.levelDb).toBeGreaterThan(-6.5)
  })
})

test('a peak above 2 kHz is a crossover, not the resonance that the middle of the range begins at', () => {
  const bump = (hertz: number, atHz: number) => Math.exp(-(Math.log2(hertz / atHz) ** 2))
  // 6 ohm with a resonance at 60 Hz and a crossover peak at 5 kHz; lowest of all between them, at 400 Hz.
  const re = GRID.map((hertz) => 6 + 20 * bump(hertz, 60) + 10 * bump(hertz, 5000) - bump(hertz, 400))
  const at = GRID[midRangeIndex({ re, im: GRID.map(() => 0) }, GRID)] ?? 0
  expect(Math.abs(Math.log2(at / 400))).toBeLessThan(0.1)
})
