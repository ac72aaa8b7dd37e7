import { logSpaced } from '../box/circuit.ts'
import { moduli } from '../complex-curve.ts'
import type { MeasuredSweep } from '../measurement/sweep.ts'
import { filtered } from './condensed.ts'
import { plannedImpedance } from './curves.ts'
import type { PlannedBox } from './planned-box.ts'

/** A reading that no box made to this plan can give. */
export interface Slip {
  hz: number
  ohm: number
}

/** So far below the lowest or above the highest impedance of the plan lies no box, whatever its fault. Common practice, no source. */
const BEYOND = 8
/** More readings than this share are no slips, but tell of the terminals. Common practice, no source. */
const MOST_SLIPS = 0.2
const POINTS = 200

/**
 * Parts readings of a loose clip (no volts, or no load) from the others: one of them draws a fit further aside than all
 * the rest can hold. What is left of the sweep, and the slips; the sweep as it is where they are too many for slips.
 */
export function withoutSlips(
  planned: PlannedBox,
  sweep: MeasuredSweep,
  leadOhm: number,
): { kept: MeasuredSweep; slips: Slip[] } {
  const { frequencyHz, ohm } = sweep
  // Fine enough to see the peaks of the plan, however coarse the sweep is.
  const grid = logSpaced(frequencyHz[0]!, frequencyHz.at(-1)!, POINTS)
  const plan = moduli(plannedImpedance(planned, grid, leadOhm))
  const lowest = Math.min(...plan) / BEYOND
  const highest = Math.max(...plan) * BEYOND
  const isSlip = (slip: Slip): boolean => slip.ohm < lowest || slip.ohm > highest
  const slips = Array.from(ohm, (value, i): Slip => ({ hz: frequencyHz[i]!, ohm: value })).filter(isSlip)
  if (slips.length === 0 || slips.length > MOST_SLIPS * ohm.length) return { kept: sweep, slips: [] }
  return { kept: filtered(sweep, (reading) => !isSlip(reading)), slips }
}
