/** A root in the complex plane, rad/s over the centre frequency. */
interface Root {
  re: number
  im: number
}

/** The polynomial s⁴ + a1 s³ + a2 s² + a3 s + 1 at a root, over its distances to the other roots. */
function step(root: Root, roots: readonly Root[], coefficients: readonly number[]): Root {
  let [re, im] = [1, 0]
  for (const c of coefficients) [re, im] = [re * root.re - im * root.im + c, re * root.im + im * root.re]
  for (const other of roots) {
    if (other === root) continue
    const [dRe, dIm] = [root.re - other.re, root.im - other.im]
    const d2 = dRe * dRe + dIm * dIm
    ;[re, im] = [(re * dRe + im * dIm) / d2, (im * dRe - re * dIm) / d2]
  }
  return { re, im }
}

/** Roots of s⁴ + a1 s³ + a2 s² + a3 s + 1, by the method of Durand (1960) and Kerner (1966). */
export function quarticRoots(a1: number, a2: number, a3: number): Root[] {
  const roots = [0, 1, 2, 3].map((i) => ({
    re: Math.cos(0.4 + (i * Math.PI) / 2),
    im: Math.sin(0.4 + (i * Math.PI) / 2),
  }))
  let furthest = 1
  for (let round = 0; round < 200 && furthest > 1e-14; round++) {
    furthest = 0
    for (const root of roots) {
      const { re, im } = step(root, roots, [a1, a2, a3, 1])
      root.re -= re
      root.im -= im
      furthest = Math.max(furthest, Math.hypot(re, im) / Math.hypot(root.re, root.im))
    }
  }
  return roots
}

const TWENTY_DB = Math.LN10

/**
 * Time in which the slowest part of a closed box's ringing falls by 20 dB, ms.
 * Source: pole pair of R. H. Small's closed-box response (1972): 2.303 · 2Q/ω0 above Q = 0.5; derived.
 */
export function closedDecayMs(fcHz: number, qtc: number): number {
  const half = 1 / (2 * qtc)
  const slowest = qtc > 0.5 ? half : half - Math.sqrt(half * half - 1)
  return (1000 * TWENTY_DB) / (2 * Math.PI * fcHz * slowest)
}

/** The figures of a vented box that its polynomial is made of; `ql` stands for all its losses together. */
export interface VentedFigures {
  fsHz: number
  qts: number
  h: number
  alpha: number
  ql: number
}

/**
 * The same for a vented box, ms, from the poles of its fourth-order response.
 * Source: R. H. Small, J. Audio Eng. Soc. 21 (June 1973), response with leakage; poles found numerically.
 */
export function ventedDecayMs({ fsHz, qts, h, alpha, ql }: VentedFigures): number {
  const root = Math.sqrt(h)
  const a1 = (1 + (h * qts) / ql) / (root * qts)
  const a2 = (h / ql + (alpha + 1 + h * h) * qts) / (h * qts)
  const a3 = (h + qts / ql) / (root * qts)
  const slowest = Math.min(...quarticRoots(a1, a2, a3).map(({ re }) => -re))
  return (1000 * TWENTY_DB) / (2 * Math.PI * fsHz * root * slowest)
}
