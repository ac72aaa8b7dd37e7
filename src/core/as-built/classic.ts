import type { AsBuiltSections } from '../../schema/as-built.ts'
import type { PlannedBox } from './planned-box.ts'
import type { TurningPoint } from './turning-points.ts'

type SecondOpinion = NonNullable<AsBuiltSections['secondOpinion']>

const NOTHING = {
  method: '',
  lowerPeakHz: null,
  dipHz: null,
  upperPeakHz: null,
  resonanceHz: null,
  alpha: null,
  effectiveVolumeL: null,
  leakageQ: null,
}

/**
 * Tuning, α and QL of a vented box from the two peaks and the dip between them, frequencies in Hz, `dipOhm` and
 * `resistanceOhm` at the same terminals. Known error at QL 5 to 10: the dip is up to 2.5 % off fb, α 3 to 7 % high,
 * QL 3 to 6 % low. QL is null where the dip is not above the resistance or leaves no positive value.
 * Source: R. H. Small, J. Audio Eng. Soc. 21 (June 1973), parameter measurement, from memory; re-derived.
 */
export function threeFrequencies(
  hz: { lower: number; dip: number; upper: number },
  dipOhm: number,
  resistanceOhm: number,
  { qes, qms }: { qes: number; qms: number },
): { tuningHz: number; driverResonanceHz: number; alpha: number; leakageQ: number | null } {
  const { lower, dip, upper } = hz
  const driverResonanceHz = (lower * upper) / dip
  const alpha = ((upper ** 2 - dip ** 2) * (dip ** 2 - lower ** 2)) / (upper ** 2 * lower ** 2)
  const ratio = dipOhm / resistanceOhm
  const q = (dip / driverResonanceHz / alpha) * (1 / (qes * (ratio - 1)) - 1 / qms)
  return { tuningHz: dip, driverResonanceHz, alpha, leakageQ: ratio > 1 && q > 0 ? q : null }
}

function vented(
  planned: PlannedBox,
  turns: readonly TurningPoint[],
  meterOhm: number,
  leadOhm: number,
): SecondOpinion | null {
  const at = turns.findIndex(({ kind }, i) => kind === 'dip' && i > 0 && turns[i + 1]?.kind === 'peak')
  const [lower, dip, upper] = [turns[at - 1], turns[at], turns[at + 1]]
  if (at < 0 || lower === undefined || dip === undefined || upper === undefined) return null
  const { speaker } = planned
  const found = threeFrequencies(
    { lower: lower.hz, dip: dip.hz, upper: upper.hz },
    dip.ohm - leadOhm,
    meterOhm,
    speaker.driver,
  )
  return {
    ...NOTHING,
    method: 'two peaks and the dip between them, R. H. Small 1973',
    lowerPeakHz: lower.hz,
    dipHz: dip.hz,
    upperPeakHz: upper.hz,
    resonanceHz: found.tuningHz,
    alpha: found.alpha,
    effectiveVolumeL: (speaker.acousticVolumeL * speaker.alpha) / found.alpha,
    leakageQ: found.leakageQ,
  }
}

function closed(planned: PlannedBox, turns: readonly TurningPoint[]): SecondOpinion | null {
  const peak = turns.find(({ kind }) => kind === 'peak')
  if (peak === undefined) return null
  const { speaker } = planned
  const alpha = (peak.hz / speaker.driver.fsHz) ** 2 - 1
  return {
    ...NOTHING,
    method: 'the peak, fc = fs √(1 + α), R. H. Small 1972',
    upperPeakHz: peak.hz,
    resonanceHz: peak.hz,
    alpha,
    effectiveVolumeL: alpha > 0 ? (speaker.acousticVolumeL * speaker.alpha) / alpha : null,
  }
}

/** The published formulas on the turning points of a sweep that holds `leadOhm` of lead; null where these are not found. */
export function secondOpinion(
  planned: PlannedBox,
  turns: readonly TurningPoint[],
  meterOhm: number | null,
  leadOhm: number,
): SecondOpinion | null {
  if (planned.speaker.opening === null) return closed(planned, turns)
  // The formulas are of a port; a radiator has a suspension of its own.
  if (planned.speaker.opening.kind === 'radiator' || meterOhm === null) return null
  return vented(planned, turns, meterOhm, leadOhm)
}
