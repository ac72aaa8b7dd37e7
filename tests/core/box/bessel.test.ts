import { expect, it } from 'vitest'
import { besselJ0, besselJ1, struveH1 } from '../../../src/core/box/bessel.ts'

// Abramowitz & Stegun (1964), table 9.1, from memory.
it.each([
  [0, 1, 0],
  [1, 0.765197686557967, 0.4400505857],
  [2, 0.223890779141236, 0.5767248078],
  [5, -0.177596771314338, -0.3275791376],
  [10, -0.245935764451348, 0.0434727462],
])('J0 and J1 at x = %d', (x, j0, j1) => {
  expect(Math.abs(besselJ0(x) - j0)).toBeLessThan(1e-14)
  expect(Math.abs(besselJ1(x) - j1)).toBeLessThan(6e-11)
})

// Abramowitz & Stegun (1964), table 9.5, from memory.
it.each([2.4048255577, 5.5200781103, 8.6537279129])('J0 vanishes at %d', (x) => {
  expect(Math.abs(besselJ0(x))).toBeLessThan(1e-10)
})
it.each([3.8317059702, 7.0155866698, 10.1734681351])('J1 vanishes at %d', (x) => {
  expect(Math.abs(besselJ1(x))).toBeLessThan(1e-10)
})

// Abramowitz & Stegun (1964), table 12.1, from memory.
it.each([
  [0, 0],
  [1, 0.1984573],
  [2, 0.6467637],
  [5, 0.8078119],
])('H1 at x = %d', (x, h1) => {
  expect(Math.abs(struveH1(x) - h1)).toBeLessThan(6e-8)
})

const PANELS = 100_000

/** Simpson's rule over 0…end, the slow twin of the recurrence. */
function simpson(end: number, integrand: (t: number) => number): number {
  const step = end / PANELS
  let sum = integrand(0) + integrand(end)
  for (let i = 1; i < PANELS; i++) sum += (i % 2 === 0 ? 2 : 4) * integrand(i * step)
  return (sum * step) / 3
}

// Integral representations, Abramowitz & Stegun (1964) 9.1.18, 9.1.21 and 12.1.7, from memory.
it.each([1e-9, 2e-8, 1e-4, 0.01, 0.3, 1, 3.7, 8, 11.99, 12, 20, 25.01, 60, 137.5, 300, 500])(
  'the integrals agree at x = %d',
  (x) => {
    const j0 = simpson(Math.PI, (t) => Math.cos(x * Math.sin(t))) / Math.PI
    const j1 = simpson(Math.PI, (t) => Math.cos(t - x * Math.sin(t))) / Math.PI
    const h1 = ((2 * x) / Math.PI) * simpson(Math.PI / 2, (t) => Math.sin(x * Math.cos(t)) * Math.sin(t) ** 2)
    expect(Math.abs(besselJ0(x) - j0)).toBeLessThan(1e-12)
    expect(Math.abs(besselJ1(x) - j1)).toBeLessThan(1e-12)
    expect(Math.abs(struveH1(x) - h1)).toBeLessThan(1e-10)
  },
)

// First two terms of the power series, Abramowitz & Stegun (1964) 9.1.10 and 12.1.5, from memory.
it.each([1e-10, 9.9e-9, 1.01e-8, 1e-6, 1e-3])('digits are not lost at small x = %d', (x) => {
  expect(Math.abs(besselJ1(x) / (x / 2 - x ** 3 / 16) - 1)).toBeLessThan(1e-12)
  expect(Math.abs(struveH1(x) / (((2 * x * x) / (3 * Math.PI)) * (1 - x ** 2 / 15)) - 1)).toBeLessThan(1e-12)
})
