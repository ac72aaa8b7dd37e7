import type { Coil, Resonance } from '../driver/impedance.ts'

/**
 * The values sought, all but the exponent as logarithms.
 * `mass`: added over moving mass. `stiffness`: air of the box over suspension, Vas/Vt. `boxMass`: moving mass on the box
 * over that in free air. Loss of the suspension is free in each sweep: it changes with frequency and with the box.
 */
export type Unknown =
  | 're'
  | 'fs'
  | 'qms'
  | 'qes'
  | 'le'
  | 'exponent'
  | 'mass'
  | 'massQms'
  | 'stiffness'
  | 'boxMass'
  | 'boxQms'

/** The values as they are, not as logarithms. */
export type Sought = Record<Unknown, number>

/** Wider than any driver; a fit that ends at one of these has found nothing. */
export const BOUNDS: Record<Unknown, readonly [lowest: number, highest: number]> = {
  re: [0.05, 5000],
  fs: [2, 20_000],
  qms: [0.05, 100],
  qes: [0.02, 100],
  le: [1e-7, 0.1],
  exponent: [0.3, 1],
  mass: [0.005, 100],
  massQms: [0.05, 200],
  stiffness: [0.005, 1000],
  boxMass: [0.7, 1.6],
  boxQms: [0.05, 200],
}

const NEUTRAL: Sought = {
  re: 1,
  fs: 1,
  qms: 1,
  qes: 1,
  le: 1e-7,
  exponent: 1,
  mass: 1,
  massQms: 1,
  stiffness: 1,
  boxMass: 1,
  boxQms: 1,
}

const isPlain = (name: Unknown): boolean => name === 'exponent'

export const toScale = (name: Unknown, value: number): number => (isPlain(name) ? value : Math.log(value))

/** What a fit calls values, as they are; what is not sought stays neutral. */
export function soughtOf(names: readonly Unknown[], values: readonly number[]): Sought {
  const sought = { ...NEUTRAL }
  names.forEach((name, i) => {
    sought[name] = isPlain(name) ? values[i]! : Math.exp(values[i]!)
  })
  return sought
}

export const coilOf = (s: Sought, leadOhm: number): Coil => ({
  reOhm: s.re,
  leH: s.le,
  exponent: s.exponent,
  leadOhm,
})

export const freeAirOf = (s: Sought): Resonance => ({ fHz: s.fs, qms: s.qms, qes: s.qes })

/**
 * The resonance with an added mass: f falls and Qes rises with the root of the whole mass over the moving mass.
 * Definitions of Qes and fs, Small 1972.
 */
export function withMassOf(s: Sought): Resonance {
  const root = Math.sqrt(1 + s.mass)
  return { fHz: s.fs / root, qms: s.massQms, qes: s.qes * root }
}

/**
 * The resonance on a closed box: stiffness times 1 + Vas/Vt, mass as found there, so that
 * Vas = Vt (fct Qect/(fs Qes) − 1) whatever the mass does. Small 1972; Beranek and Mellow 2012, eq. 7.65.
 */
export function inBoxOf(s: Sought): Resonance {
  const stiffness = 1 + s.stiffness
  return {
    fHz: s.fs * Math.sqrt(stiffness / s.boxMass),
    qms: s.boxQms,
    qes: s.qes * Math.sqrt(stiffness * s.boxMass),
  }
}
