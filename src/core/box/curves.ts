import type { Curve } from '../../schema/box-tuning.ts'
import type { BoxTuningSections } from '../../schema/box-tuning-sections.ts'
import { moduli, phasesDeg } from '../complex-curve.ts'
import { numbers, plain } from '../numbers.ts'
import { type Baffle, withBaffle } from './baffle.ts'
import { logSpaced } from './circuit.ts'
import { allowedShares, type Ratings } from './limits.ts'
import type { Loudspeaker } from './loudspeaker.ts'
import { solveLoudspeaker } from './solve-loudspeaker.ts'

/** The frequencies of a curve; 20 Hz to 20 kHz in 200 points when nothing is said. */
export const gridOf = (curve: Curve | undefined): Float64Array =>
  logSpaced(curve?.fromHz ?? 20, curve?.toHz ?? 20_000, curve?.points ?? 200)

// Far enough for the phase to move by more than rounding, near enough to be a derivative.
const STEP = 1e-5

/** Group delay, ms: minus the slope of the phase, from a second solution a hair higher. */
function groupDelayMs(speaker: Loudspeaker, grid: Float64Array, phaseRad: Float64Array): number[] {
  const higher = grid.map((hz) => hz * (1 + STEP))
  const shifted = solveLoudspeaker(speaker, higher, 1).phaseRad
  return numbers(grid.length, (i) => {
    const turn = shifted[i]! - phaseRad[i]!
    const unwrapped = turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI))
    return (-1000 * unwrapped) / (2 * Math.PI * grid[i]! * STEP)
  })
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
  const response = withBaffle(solveLoudspeaker(speaker, grid, voltageV), baffle, grid, speaker.air.speedMPerS)
  const { channelRe, channelIm, excursionMm, ventSpeedMPerS } = response
  const channel = { re: channelRe, im: channelIm }
  const splDb = plain(response.splDb)
  const allowed = allowedShares(ratings, grid, response)
  return {
    frequencyHz: plain(grid),
    splDb,
    impedanceOhm: moduli(channel),
    impedancePhaseDeg: phasesDeg(channel),
    excursionMm: plain(excursionMm),
    portAirSpeedMPerS: plain(ventSpeedMPerS),
    groupDelayMs: groupDelayMs(speaker, grid, response.phaseRad),
    maximumSplDb: splDb.map((level, i) => level + 20 * Math.log10(allowed[i]!.share)),
    limitedBy: allowed.map(({ limitedBy }) => limitedBy),
  }
}
