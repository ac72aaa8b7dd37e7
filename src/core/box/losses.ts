import type { Box } from '../../schema/box.ts'
import type { Assumption } from '../../schema/frame.ts'
import type { AirState } from '../air.ts'

/** Loss factors of a box at its resonance, `null` for none, and how much the lining widens its air. */
export interface BoxLosses {
  leakageQ: number | null
  absorptionQ: number | null
  portQ: number | null
  /** Acoustic over geometric volume. */
  liningGain: number
}

const LINING = {
  none: { gain: 1, absorptionQ: null, why: 'a box without lining absorbs next to nothing' },
  walls: { gain: 1.02, absorptionQ: 50, why: 'lined walls: 30 to 80; common practice, no source' },
  filled: { gain: 1.15, absorptionQ: 5, why: 'filled box: 3 to 10; common practice, no source' },
} as const

/** How much the lining widens the air of a box: acoustic over geometric volume. Common practice, no source. */
export const liningGain = (box: Box): number => LINING[box.lining ?? 'none'].gain

const LEAKAGE = {
  closed: { q: 20, why: 'a glued and sealed closed box: 10 to 50; common practice, no source' },
  vented: {
    q: 7,
    why: 'usual design start, R. H. Small 1973 part III; small boxes 5 to 20, common practice',
  },
  'passive-radiator': { q: 7, why: 'as for a vented box; small boxes 5 to 20, common practice' },
} as const

/**
 * Highest portQ that friction on a smooth straight wall allows: radius over boundary layer.
 * Source: A. D. Pierce, Acoustics, ch. 10, from memory. `radiusM` and `tuningHz` > 0.
 */
export const wallFrictionQ = (radiusM: number, tuningHz: number, viscosityM2PerS: number): number =>
  radiusM / Math.sqrt((2 * viscosityM2PerS) / (2 * Math.PI * tuningHz))

/**
 * The losses of a box: what is given stands, what is left out gets the usual value and a row in `assumptions`.
 * @param frictionQ  portQ by wall friction when the port is one plug of air; null when its model has friction inside
 */
export function boxLosses(
  box: Box,
  frictionQ: number | null,
): { losses: BoxLosses; assumptions: Assumption[] } {
  const lining = LINING[box.lining ?? 'none']
  const leakage = LEAKAGE[box.kind]
  const assumptions: Assumption[] = []
  const assumed = (field: string, value: number | string | null, why: string, unit = '') =>
    assumptions.push({ at: `/box/${field}`, value, unit, why })
  if (box.lining === undefined) assumed('lining', 'none', 'none was named')
  if (box.leakageQ === undefined) assumed('leakageQ', leakage.q, leakage.why)
  if (box.absorptionQ === undefined) assumed('absorptionQ', lining.absorptionQ, lining.why)
  if (box.portQ === undefined && box.kind === 'vented')
    assumed(
      'portQ',
      frictionQ,
      frictionQ === null ? 'the pipe model has wall friction in it' : 'friction on a smooth wall',
    )
  return {
    losses: {
      leakageQ: box.leakageQ === undefined ? leakage.q : box.leakageQ,
      absorptionQ: box.absorptionQ === undefined ? lining.absorptionQ : box.absorptionQ,
      portQ: box.portQ === undefined ? frictionQ : box.portQ,
      liningGain: lining.gain,
    },
    assumptions,
  }
}

/** Compliance of an air volume in litres, m³/Pa. */
export const boxCompliance = (volumeL: number, air: AirState): number =>
  (volumeL * 1e-3) / (air.densityKgPerM3 * air.speedMPerS ** 2)
