import type { PowerBudgetSections } from '../../schema/power-budget.ts'
import { cleanOutput } from './amplifier.ts'
import type { BudgetInput } from './budget-input.ts'
import { averagePowerW, CREST_DB } from './supply-current.ts'

type LimitedBy = PowerBudgetSections['power']['limitedBy']

/** What a channel gives with the knob open. */
export interface FullVolume {
  /** Sine power of a channel at the level of its peaks, W. */
  peakW: number
  /** Power on the programme, W, as far as the source of current carries it. */
  programmeW: number
  limitedBy: LimitedBy
}

/**
 * What is reached at full volume: the clip point, or less when the audio source cannot drive the amplifier there, or
 * when the supply does not carry the programme. Peaks are short and come out of the capacitors, so a current limit
 * is held against the average. Derived from the gain structure and the energy balance.
 * @param overdriveDb  level of the audio source over the clip point, knob open; null when no signal is described
 */
export function fullVolume(input: BudgetInput, cleanPowerW: number, overdriveDb: number | null): FullVolume {
  const isShort = overdriveDb !== null && overdriveDb < 0
  const peakW = isShort ? cleanPowerW * 10 ** (overdriveDb / 10) : cleanPowerW
  const wantedW = averagePowerW(peakW, CREST_DB[input.programme])
  const carriedW = carriedPowerW(input)
  if (carriedW < wantedW) return { peakW, programmeW: carriedW, limitedBy: 'supply-current' }
  return { peakW, programmeW: wantedW, limitedBy: isShort ? 'source-level' : 'clipping' }
}

/**
 * The same at the highest voltage the source may have: a full pack heats the drivers most.
 * Derived: the clip point moves with the voltage, the level of the audio source does not.
 * @param overdriveDb  as above, at the voltage of the source
 */
export function hottestVolume(input: BudgetInput, overdriveDb: number | null): FullVolume {
  const { amplifier, source, loadOhm } = input
  const voltageV = source.highestVoltageV
  const riseDb = 20 * Math.log10(voltageV / source.voltageV)
  return fullVolume(
    { ...input, source: { ...source, voltageV } },
    cleanOutput(amplifier, voltageV, loadOhm).powerW,
    overdriveDb === null ? null : overdriveDb - riseDb,
  )
}

/** Average power a channel that the current limit of the source allows, W; the idle current goes first. */
function carriedPowerW({ amplifier, source, indicatorMa }: BudgetInput): number {
  if (source.currentLimitA === null) return Number.POSITIVE_INFINITY
  const forSoundA = source.currentLimitA - (amplifier.quiescentCurrentMa + indicatorMa) * 1e-3
  return (Math.max(0, forSoundA) * amplifier.efficiency * source.voltageV) / amplifier.channels
}
