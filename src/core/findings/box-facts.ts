import type { Box } from '../../schema/box.ts'
import type { PatchStep } from '../../schema/frame.ts'

/** What the rules about driver and box look at. */
export interface BoxFacts {
  kind: Box['kind']
  /** Pointer to the parameters of the driver in the request. */
  driverAt: string
  driveVoltageV: number
  /** Pointer to the voltage of the channel and whether its parent is given; null where the amplifier sets it. */
  drive: { at: string; given: boolean } | null
  /** Steps that make the same box a closed one; null where it is closed already or that is no plain change. */
  closing: PatchStep[] | null
  /** What the bass then stands above the rest, dB; null where that cannot be told. */
  closedPeakDb: () => number | null
  /** Steps that tune the port to a frequency, Hz, at which it still fits the box; null where it does not. */
  tuning: (tuningHz: number) => PatchStep[] | null
  fsHz: number
  /** Lining of the box, and whether the absorption is given as a figure, which then goes before the lining. */
  lining: NonNullable<Box['lining']>
  absorptionGiven: boolean
  /** Whether the port still fits when the box is full of fibre. */
  fitsFilled: boolean
  /** Where the level has fallen by 6 dB, Hz; null when it does not. */
  f6Hz: number | null
  qts: number
  h: number | null
  peakDb: number
  peakHz: number | null
  xmaxMm: number | null
  bandFromHz: number
  excursionMm: number
  excursionAtHz: number
  /** Tuning of an open box; null for a closed one. */
  tuningHz: number | null
  /** Highest excursion below that tuning, and below the band where the box still holds the cone. */
  unloadedMm: number
  heldBelowBandMm: number
  protectiveHighPassHz: number | null
  safeVoltageV: number | null
  airSpeedMPerS: number
  airSpeedAtHz: number
  radiatorMm: number
  radiatorXmaxMm: number | null
  /** The lowest note wanted and the level there against the level above the bass; null when none is wanted. */
  lowest: { hz: number; levelDb: number } | null
  /** A total Q wanted of a closed box; null when none was named. */
  wanted: { qtc: number; reachable: boolean } | null
  /** Power of a full sine in one driver and its rating; null where that is unknown or judged elsewhere. */
  drivePower: { powerW: number; ratedW: number } | null
  /** The worst contradiction among the given driver data; null when they agree. */
  contradiction: { field: string; given: number; implied: number; share: number } | null
}
