/** A fourth-order high-pass as box figures, all relative to the driver. */
export interface VentedAlignment {
  name: 'QB3' | 'B4' | 'C4' | 'BL4'
  qts: number
  h: number
  alpha: number
  f3OverFs: number
  /** Highest point above the mid-band, dB. */
  peakDb: number
}

/** Coefficients of s⁴ + a1 s³ + a2 s² + a3 s + 1. */
type Polynomial = readonly [number, number, number]

const SIN = Math.sin(Math.PI / 8)
const COS = Math.cos(Math.PI / 8)
const B4: Polynomial = [2 * (SIN + COS), 2 + Math.SQRT2, 2 * (SIN + COS)]

/** Low-pass denominator s⁴ + b3 s³ + b2 s² + b1 s + b0 turned into a normalised high-pass. */
function highPass(b3: number, b2: number, b1: number, b0: number): Polynomial {
  const w = b0 ** -0.25
  return [b1 / b0 / w, b2 / b0 / w ** 2, b3 / b0 / w ** 3]
}

const BL4 = highPass(10, 45, 105, 105)

/** Quasi-Butterworth of third order: A1 = A2 = 0; `a2` > 2 + √2. */
const qb3 = (a2: number): Polynomial => {
  const a1 = Math.sqrt(2 * a2)
  return [a1, a2, (a2 * a2 + 2) / (2 * a1)]
}

/** Chebyshev: Butterworth poles with their real parts times `k`, 0 < k < 1. */
const c4 = (k: number): Polynomial => {
  const pair = (real: number, imaginary: number) =>
    [2 * k * real, k * k * real * real + imaginary * imaginary] as const
  const [p, q] = pair(SIN, COS)
  const [r, s] = pair(COS, SIN)
  return highPass(p + r, q + s + p * r, p * s + q * r, q * s)
}

/**
 * Box and driver that a polynomial asks for, with leakage `ql` (Infinity for none).
 * Source: R. H. Small, J. Audio Eng. Soc. 21 (June 1973), appendix; from memory, re-derived.
 */
function boxOf([a1, a2, a3]: Polynomial, ql: number): { h: number; qts: number; alpha: number } {
  const root = tuningRoot(a1, a3, ql)
  const h = root * root
  const inverseQt = a1 * root - h / ql
  const alpha = h * (a2 - inverseQt / ql) - 1 - h * h
  return { h, qts: 1 / inverseQt, alpha }
}

// r⁴ − a1 QL r³ + a3 QL r − 1 = 0, divided by QL so that it also holds without leakage; r near √(a3/a1).
function tuningRoot(a1: number, a3: number, ql: number): number {
  let r = Math.sqrt(a3 / a1)
  let step = r
  for (let i = 0; i < 60 && Math.abs(step) > 1e-14 * r; i++) {
    const r3 = r * r * r
    step = ((r * r3 - 1) / ql - a1 * r3 + a3 * r) / ((4 * r3) / ql - 3 * a1 * r * r + a3)
    r -= step
  }
  return r
}

/** Terms of |D|² = y⁸ + A1 y⁶ + A2 y⁴ + A3 y² + 1. Source: Small 1973, as below. */
const magnitude = (a1: number, a2: number, a3: number): Polynomial => [
  a1 * a1 - 2 * a2,
  a2 * a2 + 2 - 2 * a1 * a3,
  a3 * a3 - 2 * a2,
]

/** −3 dB frequency over √(fs fb). |D|² = y⁸ + A1 y⁶ + A2 y⁴ + A3 y² + 1 equals 2 y⁸ there; the highest such y. */
function f3OverCentre([a1, a2, a3]: Polynomial): number {
  const [c1, c2, c3] = magnitude(a1, a2, a3)
  const excess = (y: number) => {
    const z = y * y
    return (((z - c1) * z - c2) * z - c3) * z - 1
  }
  let high = 20
  while (excess(high) > 0 && high > 0.01) high *= 0.99
  let low = high
  high = low / 0.99
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2
    if (excess(middle) > 0) high = middle
    else low = middle
  }
  return (low + high) / 2
}

/** Highest point of the response, dB: the least of |D|²/y⁸ over frequency. */
function peakDb([a1, a2, a3]: Polynomial): number {
  const [c1, c2, c3] = magnitude(a1, a2, a3)
  let least = 1
  // In steps of 1% the highest point of so smooth a curve is met to a thousandth of a decibel.
  for (let y = 0.2; y < 20; y *= 1.01) {
    const z = 1 / (y * y)
    least = Math.min(least, 1 + z * (c1 + z * (c2 + z * (c3 + z))))
  }
  return -10 * Math.log10(least)
}

function named(name: VentedAlignment['name'], polynomial: Polynomial, ql: number): VentedAlignment {
  const box = boxOf(polynomial, ql)
  return { name, ...box, f3OverFs: f3OverCentre(polynomial) * Math.sqrt(box.h), peakDb: peakDb(polynomial) }
}

const finite = (leakageQ: number | null): number => leakageQ ?? Number.POSITIVE_INFINITY

/** The Butterworth box and the driver that it needs. Source: A. N. Thiele, J. Audio Eng. Soc. 19, 382 (1971); Small 1973. */
export const butterworth4 = (leakageQ: number | null): VentedAlignment => named('B4', B4, finite(leakageQ))

/** The Bessel box and the driver that it needs. Source: R. M. Bullock, Speaker Builder (1981), in part second-hand. */
export const bessel4 = (leakageQ: number | null): VentedAlignment => named('BL4', BL4, finite(leakageQ))

/**
 * The classic vented box for a driver of total Q `qts`: quasi-Butterworth below the Butterworth value, Chebyshev above.
 * Null where no member of the family fits (qts below about 0.05 or above about 0.9).
 * Source: A. N. Thiele, J. Audio Eng. Soc. 19, 382 (1971), Table I; R. H. Small 1973; solved here from the polynomials.
 */
export function classicVented(qts: number, leakageQ: number | null): VentedAlignment | null {
  const ql = finite(leakageQ)
  const b4Qts = boxOf(B4, ql).qts
  if (Math.abs(qts / b4Qts - 1) < 1e-6) return named('B4', B4, ql)
  const below = qts < b4Qts
  const family = below ? qb3 : c4
  const overshoots = (parameter: number): boolean => {
    const q = boxOf(family(parameter), ql).qts
    return below ? q < qts : q > qts
  }
  const parameter = firstBeyond(overshoots, below ? 2 + Math.SQRT2 : 1, below ? 1.03 : 0.97)
  if (parameter === null) return null
  const found = named(below ? 'QB3' : 'C4', family(parameter), ql)
  return found.alpha > 0 ? found : null
}

/** Where `beyond` first turns true on the way from `start` by factors of `step`; null within 300 steps. */
function firstBeyond(beyond: (value: number) => boolean, start: number, step: number): number | null {
  let far = start
  for (let i = 0; i < 300 && !beyond(far); i++) far *= step
  if (!beyond(far)) return null
  let near = far / step
  for (let i = 0; i < 60; i++) {
    const middle = (near + far) / 2
    if (beyond(middle)) far = middle
    else near = middle
  }
  return far
}

// A Chebyshev box that ripples more is large, rings, and gains nothing: common practice, no source.
const MOST_RIPPLE_DB = 1

/** The classic vented box for a driver, or null where it would ripple so much that a closed box is the better one. */
export function worthwhileVented(qts: number, leakageQ: number | null): VentedAlignment | null {
  const classic = classicVented(qts, leakageQ)
  return classic === null || classic.peakDb > MOST_RIPPLE_DB ? null : classic
}

/** Closed boxes with a name of their own. Source: R. H. Small, J. Audio Eng. Soc. 20, 798 (Dec 1972), from memory. */
export const namedClosed = [
  { name: 'critically damped', qtc: 0.5 },
  { name: 'Bessel', qtc: 1 / Math.sqrt(3) },
  { name: 'Butterworth B2', qtc: Math.SQRT1_2 },
  { name: 'Chebyshev C2, 1.25 dB', qtc: 1 },
] as const

/** The named closed box nearest to a total Q, by ratio. */
export const nearestClosed = (qtc: number): { name: string; qtc: number } =>
  namedClosed.reduce((best, row) =>
    Math.abs(Math.log(row.qtc / qtc)) < Math.abs(Math.log(best.qtc / qtc)) ? row : best,
  )
