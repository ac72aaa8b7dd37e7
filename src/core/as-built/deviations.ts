/**
 * How a finished box departs from its plan, in the terms of the circuit. Scales are natural logarithms of
 * built over planned, so that 0.1 is about 10 %; losses are 1/Q at the box resonance, as built, 0 for none.
 */
export interface Deviations {
  /** Resistance in series beyond the plan, over what a meter should read at the terminals; negative for less. */
  series: number
  /** (Bl)² of each driver: how high its peaks are. */
  motor: number
  /** Compliance of the suspension; the moving mass stays as planned. */
  suspension: number
  /** Mechanical resistance of the suspension. */
  friction: number
  /** Reactance of the coil at the box resonance beyond the plan, over the direct-current resistance of one driver. */
  coil: number
  /** Acoustic volume of the box. */
  air: number
  /** Tuning of a port or passive radiator. */
  tuning: number
  leak: number
  absorption: number
}

export type Deviation = keyof Deviations

/** Between which values a deviation is sought, and how far off it usually is where nothing went wrong. */
export interface Range {
  from: number
  to: number
  usual: number
}

// Small negative losses are let pass, or noise about none would be cut off and the intervals with it.
const LOSS = { from: -0.2, to: 1.5, usual: 0.1 }

/** Limits of the search and the usual spread of each deviation. Common practice, no source. */
export const RANGES = {
  series: { from: -0.6, to: 8, usual: 0.08 },
  motor: { from: -1.6, to: 1.6, usual: 0.15 },
  suspension: { from: -1.6, to: 1.6, usual: 0.25 },
  friction: { from: -2, to: 2, usual: 0.4 },
  coil: { from: -1, to: 2, usual: 0.1 },
  air: { from: -1.4, to: 1.4, usual: 0.15 },
  tuning: { from: -1.2, to: 1.2, usual: 0.12 },
  leak: LOSS,
  absorption: LOSS,
} satisfies Record<Deviation, Range>
