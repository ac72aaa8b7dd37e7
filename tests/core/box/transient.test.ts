import { expect, it } from 'vitest'
import { closedDecayMs, quarticRoots, ventedDecayMs } from '../../../src/core/box/transient.ts'

it('finds the poles of the Butterworth polynomial on the unit circle', () => {
  // s⁴ + 2.6131 s³ + 3.4142 s² + 2.6131 s + 1: poles at ±67.5° and ±22.5° from the negative axis (textbook).
  const a = 2 * (Math.sin(Math.PI / 8) + Math.cos(Math.PI / 8))
  const roots = quarticRoots(a, 2 + Math.SQRT2, a)
  for (const { re, im } of roots) expect(Math.hypot(re, im)).toBeCloseTo(1, 9)
  const damping = roots.map(({ re }) => -re).sort((x, y) => x - y)
  expect(damping[0]).toBeCloseTo(Math.sin(Math.PI / 8), 9)
  expect(damping[3]).toBeCloseTo(Math.cos(Math.PI / 8), 9)
})

it('a closed box of Qtc 1 at 100 Hz falls by 20 dB in 7.33 ms', () => {
  // ln 10 · 2Q/ω0 (Small 1972, pole pair).
  expect(closedDecayMs(100, 1)).toBeCloseTo((1000 * Math.LN10 * 2) / (2 * Math.PI * 100), 4)
})

it('the slower pole counts in an overdamped box', () => {
  // Qtc 0.4: s² + 2.5 s + 1 = (s + 0.5)(s + 2).
  expect(closedDecayMs(100, 0.4)).toBeCloseTo((1000 * Math.LN10) / (2 * Math.PI * 100 * 0.5), 6)
})

it('a B4 box rings as its slower Butterworth pair', () => {
  // Thiele 1971: lossless B4 has h = 1, alpha = √2, Qts = 0.3827; its slower pair is damped by sin 22.5°.
  const decay = ventedDecayMs({
    fsHz: 50,
    qts: 1 / (2 * (Math.sin(Math.PI / 8) + Math.cos(Math.PI / 8))),
    h: 1,
    alpha: Math.SQRT2,
    ql: Number.POSITIVE_INFINITY,
  })
  expect(decay).toBeCloseTo((1000 * Math.LN10) / (2 * Math.PI * 50 * Math.sin(Math.PI / 8)), 6)
})
