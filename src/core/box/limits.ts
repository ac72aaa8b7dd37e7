import type { BoxTuningSections } from '../../schema/box-tuning-sections.ts'
import { type Baffle, withBaffle } from './baffle.ts'
import { logSpaced } from './circuit.ts'
import type { Loudspeaker } from './loudspeaker.ts'
import { type ChannelResponse, solveLoudspeaker } from './solve-loudspeaker.ts'

type LimitedBy = BoxTuningSections['limits']['limitedBy']

/** What a driver and its port stand; null where it is not known. */
export interface Ratings {
  xmaxMm: number | null
  ratedPowerW: number | null
  reOhm: number
  /** What the flow through the opening may be: air speed in a port, m/s, or peak travel of a radiator, mm. */
  opening: { kind: 'port' } | { kind: 'radiator'; xmaxMm: number | null } | null
}

/** Peak air speed at which ports become plainly audible, 5% of the speed of sound. Common practice, no source. */
export const PORT_SPEED_LIMIT_M_PER_S = 17

/** What happens at one frequency at full drive. */
export interface AtFullDrive {
  frequencyHz: number
  /** At the terminals of the hardest driven driver, V RMS. */
  driverV: number
  excursionMm: number
  ventSpeedMPerS: number
}

/** Peak travel, mm, of something that moves at a peak speed in m/s. */
const travelMm = (speedMPerS: number, frequencyHz: number): number =>
  (1000 * speedMPerS) / (2 * Math.PI * frequencyHz)

function openingShare({ opening }: Ratings, { ventSpeedMPerS, frequencyHz }: AtFullDrive): Allowed {
  if (opening?.kind === 'port')
    return { share: PORT_SPEED_LIMIT_M_PER_S / ventSpeedMPerS, limitedBy: 'air-speed' }
  if (opening?.kind === 'radiator' && opening.xmaxMm !== null)
    return { share: opening.xmaxMm / travelMm(ventSpeedMPerS, frequencyHz), limitedBy: 'radiator' }
  return { share: 1, limitedBy: 'voltage' }
}

interface Allowed {
  share: number
  limitedBy: LimitedBy
}

/** Share of the drive that a frequency allows, and what ends it; never above 1, the drive itself. */
export function allowedShare(ratings: Ratings, at: AtFullDrive): Allowed {
  const powerV = ratings.ratedPowerW === null ? at.driverV : Math.sqrt(ratings.ratedPowerW * ratings.reOhm)
  const candidates: Allowed[] = [
    { share: 1, limitedBy: 'voltage' },
    { share: powerV / at.driverV, limitedBy: 'power' },
    { share: ratings.xmaxMm === null ? 1 : ratings.xmaxMm / at.excursionMm, limitedBy: 'excursion' },
    openingShare(ratings, at),
  ]
  return candidates.reduce((least, next) => (next.share < least.share ? next : least))
}

/** The same over a whole response. */
export const allowedShares = (ratings: Ratings, grid: Float64Array, out: ChannelResponse): Allowed[] =>
  Array.from(grid, (frequencyHz, i) =>
    allowedShare(ratings, {
      frequencyHz,
      driverV: out.driverV[i]!,
      excursionMm: out.excursionMm[i]!,
      ventSpeedMPerS: out.ventSpeedMPerS[i]!,
    }),
  )

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
  /** Highest peak travel of a passive radiator from the tuning or the band up, mm; 0 without one. */
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
  baffle: Baffle | null,
): FullDrive {
  const lowestHz = Math.min(LOWEST_HZ, bandFromHz / 2)
  const grid = logSpaced(lowestHz, Math.max(HIGHEST_HZ, 4 * bandFromHz), POINTS)
  const out = withBaffle(solveLoudspeaker(speaker, grid, voltageV), baffle, grid, speaker.air.speedMPerS)
  const bandEnd = Math.max(BAND_END_HZ, 2 * bandFromHz)
  const inBand = highestOf(out.excursionMm, grid, bandFromHz, bandEnd)
  const below = highestOf(out.excursionMm, grid, lowestHz, bandFromHz)
  const loudest = lowestMaximum(grid, out, ratings, [bandFromHz, bandEnd])
  const { xmaxMm } = ratings
  // Below its tuning an open box lets the cone go; a closed one holds it down to the lowest note.
  const heldFromHz = speaker.opening === null ? lowestHz : speaker.boxHz
  const worst = Math.max(inBand.value, below.value)
  // A port or radiator works hardest about its tuning, wanted or not.
  const openFromHz = speaker.opening === null ? bandFromHz : Math.min(bandFromHz, speaker.boxHz)
  const travel = out.ventSpeedMPerS.map((speed, i) => travelMm(speed, grid[i]!))
  const radiatorMm =
    speaker.opening?.kind === 'radiator' ? highestOf(travel, grid, openFromHz, bandEnd).value : 0
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
      safeVoltageV: safeVoltageV(ratings, voltageV, worst, radiatorMm),
    },
    unloadedMm:
      speaker.opening === null ? 0 : highestOf(out.excursionMm, grid, lowestHz, speaker.boxHz).value,
    heldBelowBandMm: highestOf(out.excursionMm, grid, heldFromHz, bandFromHz).value,
    airSpeed: highestOf(out.ventSpeedMPerS, grid, openFromHz, bandEnd),
    radiatorMm,
  }
}

/** Channel voltage that keeps cone and radiator in their ranges; null when neither range is known. */
function safeVoltageV(
  ratings: Ratings,
  voltageV: number,
  excursionMm: number,
  radiatorMm: number,
): number | null {
  const radiator = ratings.opening?.kind === 'radiator' ? ratings.opening.xmaxMm : null
  const shares = [
    ...(ratings.xmaxMm === null ? [] : [ratings.xmaxMm / excursionMm]),
    ...(radiator === null || radiatorMm === 0 ? [] : [radiator / radiatorMm]),
  ]
  return shares.length === 0 ? null : voltageV * Math.min(...shares)
}

function lowestMaximum(
  grid: Float64Array,
  out: ChannelResponse,
  ratings: Ratings,
  [fromHz, toHz]: readonly [number, number],
): { maximumSplDb: number; limitedBy: LimitedBy; atHz: number } {
  const allowed = allowedShares(ratings, grid, out)
  let least: { maximumSplDb: number; limitedBy: LimitedBy; atHz: number } | null = null
  for (let i = 0; i < grid.length; i++) {
    if (grid[i]! < fromHz || grid[i]! > toHz) continue
    const { share, limitedBy } = allowed[i]!
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
