import type { BoxTuningSections, Curve } from '../../schema/box-tuning.ts'
import { type Baffle, baffleGainDb } from './baffle.ts'
import { logSpaced, type Response, responseOf, solveCircuit } from './circuit.ts'
import { allowedShare, type Ratings } from './limits.ts'
import type { Loudspeaker } from './loudspeaker.ts'

/** The frequencies of a curve; 20 Hz to 20 kHz in 200 points when nothing is said. */
export const gridOf = (curve: Curve | undefined): Float64Array =>
  logSpaced(curve?.fromHz ?? 20, curve?.toHz ?? 20_000, curve?.points ?? 200)

// Far enough for the phase to move by more than rounding, near enough to be a derivative.
const STEP = 1e-5

/** Group delay, ms: minus the slope of the phase, from a second solution a hair higher. */
function groupDelayMs(speaker: Loudspeaker, grid: Float64Array, response: Response): number[] {
  const shifted = responseOf(grid.length)
  const higher = grid.map((hz) => hz * (1 + STEP))
  solveCircuit(speaker.circuit, higher, 1, shifted)
  return Array.from(grid, (hz, i) => {
    const turn = shifted.phaseRad[i]! - response.phaseRad[i]!
    const unwrapped = turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI))
    return (-1000 * unwrapped) / (2 * Math.PI * hz * STEP)
  })
}

/** Impedance of one driver in its box over a grid, source resistance excluded, ohm. */
export function impedanceInBox(
  speaker: Loudspeaker,
  grid: Float64Array,
): { re: Float64Array; im: Float64Array } {
  const response = responseOf(grid.length)
  solveCircuit(speaker.circuit, grid, 1, response)
  return { re: response.impedanceRe, im: response.impedanceIm }
}

/**
 * All curves of a loudspeaker at `voltageV` V RMS on the channel. `baffle` adds the step of a front panel to a circuit
 * solved for full space.
 * Source: the circuit, see circuit.ts.
 */
export function curvesOf(
  speaker: Loudspeaker,
  ratings: Ratings,
  voltageV: number,
  grid: Float64Array,
  baffle: Baffle | null,
): BoxTuningSections['curves'] {
  const response = responseOf(grid.length)
  const driverVoltage = voltageV * speaker.group.voltageShare
  solveCircuit(speaker.circuit, grid, driverVoltage, response)
  const gain = baffle === null ? null : baffleGainDb(baffle, grid, speaker.air.speedMPerS)
  const splDb = Array.from(response.splDb, (level, i) => level + (gain === null ? 0 : gain[i]!))
  const { impedanceRe: re, impedanceIm: im, excursionMm, ventSpeedMPerS } = response
  const factor = speaker.group.impedanceFactor
  return {
    frequencyHz: Array.from(grid),
    splDb,
    impedanceOhm: Array.from(re, (real, i) => factor * Math.hypot(real, im[i]!)),
    impedancePhaseDeg: Array.from(re, (real, i) => (Math.atan2(im[i]!, real) * 180) / Math.PI),
    excursionMm: Array.from(excursionMm),
    portAirSpeedMPerS: Array.from(ventSpeedMPerS),
    groupDelayMs: groupDelayMs(speaker, grid, response),
    maximumSplDb: splDb.map(
      (level, i) =>
        level +
        20 * Math.log10(allowedShare(ratings, driverVoltage, excursionMm[i]!, ventSpeedMPerS[i]!).share),
    ),
  }
}
