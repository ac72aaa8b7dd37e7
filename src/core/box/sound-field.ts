import type { BoxTuningSections } from '../../schema/box-tuning-sections.ts'
import { breakUpFrequencyHz, fallFrequencyHz } from './directivity.ts'
import { lowestPairNullHz, pairPowerOverTwoAlone } from './driver-pair.ts'
import type { Loudspeaker } from './loudspeaker.ts'

/**
 * Where the sound goes: the cone as a piston, and two neighbours `spacingMm` apart (null when not known).
 * Sources: at directivity.ts and driver-pair.ts.
 */
export function soundField(
  speaker: Loudspeaker,
  spacingMm: number | null,
  bandFromHz: number,
): BoxTuningSections['directivity'] {
  const radiusM = Math.sqrt(speaker.circuit.sdM2 / Math.PI)
  const { speedMPerS } = speaker.air
  const pair = spacingMm === null ? null : { spacingM: spacingMm / 1000, speedMPerS }
  return {
    minus6At30DegHz: fallFrequencyHz('minus6Db', radiusM, 30, speedMPerS) ?? 0,
    minus6At60DegHz: fallFrequencyHz('minus6Db', radiusM, 60, speedMPerS) ?? 0,
    pistonUpToHz: breakUpFrequencyHz(radiusM, speedMPerS),
    pairNullAboveHz: pair === null ? null : lowestPairNullHz(pair),
    pairGainAt:
      pair === null
        ? null
        : { hz: bandFromHz, powerGainDb: 10 * Math.log10(pairPowerOverTwoAlone(pair, bandFromHz)) },
  }
}
