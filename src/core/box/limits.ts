import type { BoxTuningSections } from '../../schema/box-tuning-sections.ts'
import { logSpaced } from './circuit.ts'
import type { Loudspeaker } from './loudspeaker.ts'
import { type ChannelResponse, solveLoudspeaker } from './solve-loudspeaker.ts'

type LimitedBy = BoxTuningSections['limits']['limitedBy']

/** What a driver and its port stand; null where it is not known. */
export interface Ratings {
  xmaxMm: number | null
  ratedPowerW: number | null
  reOhm: number
  hasPort: boolean
}

/** Peak air speed at which ports become plainly audible, 5% of the speed of sound. Common practice, no source. */
export const PORT_SPEED_LIMIT_M_PER_S = 17

/** Share of the drive that each frequency allows, and what ends it; never above 1, the drive itself. */
export function allowedShare(
  ratings: Ratings,
  driverVoltage: number,
  excursionMm: number,
  ventSpeed: number,
): { share: number; limitedBy: LimitedBy } {
  const powerVoltage =
    ratings.ratedPowerW === null ? driverVoltage : Math.sqrt(ratings.ratedPowerW * ratings.reOhm)
  const candidates: { share: number; limitedBy: LimitedBy }[] = [
    { share: 1, limitedBy: 'voltage' },
    { share: powerVoltage / driverVoltage, limitedBy: 'power' },
    { share: ratings.xmaxMm === null ? 1 : ratings.xmaxMm / excursionMm, limitedBy: 'excursion' },
    { share: ratings.hasPort ? PORT_SPEED_LIMIT_M_PER_S / ventSpeed : 1, limitedBy: 'air-speed' },
  ]
  return candidates.reduce((least, next) => (next.share < least.share ? next : least))
}

/** How deep notes are judged; lower still when the band itself begins there. */
const LOWEST_HZ = 10
const HIGHEST_HZ = 2000
const BAND_END_HZ = 1000
const POINTS = 400

interface Worst {
  value: number
  atHz: number
}

function highestOf(values: Float64Array, grid: Float64Array, fromHz: number, toHz: number): Worst {
  let worst: Worst = { value: 0, atHz: fromHz }
  for (let i = 0; i < grid.length; i++)
    if (grid[i]! >= fromHz && grid[i]! <= toHz && values[i]! > worst.value)
      worst = { value: values[i]!, atHz: grid[i]! }
  return worst
}

/** How a loudspeaker behaves at full drive, in the band that counts and below it. */
export interface FullDrive {
  limits: BoxTuningSections['limits']
  airSpeed: Worst
  /** Highest peak travel of a passive radiator in the band, mm; 0 without one. */
  radiatorMm: number
  /** Highest peak excursion below the tuning of a vented or passive-radiator box, mm; 0 for a closed one. */
  unloadedMm: number
  /** Highest peak excursion below the band where the box still holds the cone, mm; 0 where there is no such range. */
  heldBelowBandMm: number
}

/**
 * Level and excursion limits at `voltageV` V RMS on the channel, counted from `bandFromHz` to 1 kHz, below it down to 10 Hz.
 * Per frequency the least of: the voltage, rated power across Re, xmax, air speed of 17 m/s in a port.
 * Source: superposition on the circuit; derived.
 */
export function fullDrive(
  speaker: Loudspeaker,
  ratings: Ratings,
  voltageV: number,
  bandFromHz: number,
): FullDrive {
  const lowestHz = Math.min(LOWEST_HZ, bandFromHz / 2)
  const grid = logSpaced(lowestHz, Math.max(HIGHEST_HZ, 4 * bandFromHz), POINTS)
  const out = solveLoudspeaker(speaker, grid, voltageV)
  const bandEnd = Math.max(BAND_END_HZ, 2 * bandFromHz)
  const inBand = highestOf(out.excursionMm, grid, bandFromHz, bandEnd)
  const below = highestOf(out.excursionMm, grid, lowestHz, bandFromHz)
  const loudest = lowestMaximum(grid, out, ratings, [bandFromHz, bandEnd])
  const { xmaxMm } = ratings
  // Below its tuning an open box lets the cone go; a closed one holds it down to the lowest note.
  const heldFromHz = speaker.opening === null ? lowestHz : speaker.boxHz
  const worst = Math.max(inBand.value, below.value)
  return {
    limits: {
      bandFromHz,
      ...loudest,
      excursionMm: inBand.value,
      excursionAtHz: inBand.atHz,
      excursionBelowBandMm: below.value,
      xmaxMm,
      protectiveHighPassHz:
        xmaxMm === null || worst <= xmaxMm ? null : protectiveHighPassHz(grid, out.excursionMm, xmaxMm),
      safeVoltageV: xmaxMm === null ? null : (voltageV * xmaxMm) / worst,
    },
    unloadedMm:
      speaker.opening === null ? 0 : highestOf(out.excursionMm, grid, lowestHz, speaker.boxHz).value,
    heldBelowBandMm: highestOf(out.excursionMm, grid, heldFromHz, bandFromHz).value,
    airSpeed: highestOf(out.ventSpeedMPerS, grid, bandFromHz, bandEnd),
    radiatorMm:
      speaker.opening?.kind === 'radiator'
        ? highestOf(travelMm(grid, out.ventSpeedMPerS), grid, bandFromHz, bandEnd).value
        : 0,
  }
}

const travelMm = (grid: Float64Array, speed: Float64Array): Float64Array =>
  speed.map((value, i) => (1000 * value) / (2 * Math.PI * grid[i]!))

function lowestMaximum(
  grid: Float64Array,
  out: ChannelResponse,
  ratings: Ratings,
  [fromHz, toHz]: readonly [number, number],
): { maximumSplDb: number; limitedBy: LimitedBy; atHz: number } {
  let least: { maximumSplDb: number; limitedBy: LimitedBy; atHz: number } | null = null
  for (let i = 0; i < grid.length; i++) {
    if (grid[i]! < fromHz || grid[i]! > toHz) continue
    const { share, limitedBy } = allowedShare(
      ratings,
      out.driverV[i]!,
      out.excursionMm[i]!,
      out.ventSpeedMPerS[i]!,
    )
    const maximumSplDb = out.splDb[i]! + 20 * Math.log10(share)
    if (least === null || maximumSplDb < least.maximumSplDb)
      least = { maximumSplDb, limitedBy, atHz: grid[i]! }
  }
  return least ?? { maximumSplDb: out.splDb[grid.length - 1]!, limitedBy: 'voltage', atHz: fromHz }
}

const STEEPEST_CORNER_HZ = 1000

/**
 * Lowest corner of a second-order Butterworth high-pass that keeps the excursion within `xmaxMm` at every frequency
 * of the grid; null when none up to 1 kHz does.
 * Source: |H| = y²/√(1 + y⁴); found on the circuit.
 */
export function protectiveHighPassHz(
  grid: Float64Array,
  excursionMm: Float64Array,
  xmaxMm: number,
): number | null {
  const keeps = (cornerHz: number): boolean => {
    for (let i = 0; i < grid.length; i++) {
      const y2 = (grid[i]! / cornerHz) ** 2
      if ((excursionMm[i]! * y2) / Math.sqrt(1 + y2 * y2) > xmaxMm) return false
    }
    return true
  }
  if (!keeps(STEEPEST_CORNER_HZ)) return null
  let low = 1
  let high = STEEPEST_CORNER_HZ
  for (let i = 0; i < 40; i++) {
    const middle = Math.sqrt(low * high)
    if (keeps(middle)) high = middle
    else low = middle
  }
  return high
}
