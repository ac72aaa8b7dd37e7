import type { MeasuredSweep } from '../measurement/sweep.ts'
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
const GRID = 200

/**
 * Parts readings of a loose clip (no volts, or no load) from the others: one of them draws a fit further aside than all
 * the rest can hold. What is left of the sweep, and the slips; the sweep as it is where they are too many for slips.
 */
export function withoutSlips(
  planned: PlannedBox,
  sweep: MeasuredSweep,
  leadOhm: number,
): { kept: MeasuredSweep; slips: Slip[] } {
  const { frequencyHz, ohm, phaseDeg } = sweep
  const { re, im } = plannedImpedance(planned, gridOver(frequencyHz), leadOhm)
  const plan = re.map((value, i) => Math.hypot(value, im[i]!))
  const lowest = Math.min(...plan) / BEYOND
  const highest = Math.max(...plan) * BEYOND
  const isKept = (_: number, i: number) => ohm[i]! >= lowest && ohm[i]! <= highest
  const slips = Array.from(ohm, (value, i) => ({ hz: frequencyHz[i]!, ohm: value })).filter(
    (slip, i) => !isKept(slip.ohm, i),
  )
  if (slips.length === 0 || slips.length > MOST_SLIPS * ohm.length) return { kept: sweep, slips: [] }
  return {
    kept: {
      frequencyHz: frequencyHz.filter(isKept),
      ohm: ohm.filter(isKept),
      phaseDeg: phaseDeg?.filter(isKept) ?? null,
    },
    slips,
  }
}

/** Fine enough to see the peaks of the plan, however coarse the sweep is. */
function gridOver(frequencyHz: Float64Array): Float64Array {
  const [from, to] = [frequencyHz[0]!, frequencyHz.at(-1)!]
  return Float64Array.from({ length: GRID }, (_, i) => from * (to / from) ** (i / (GRID - 1)))
}
