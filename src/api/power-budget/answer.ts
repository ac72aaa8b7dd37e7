import { ampere, decibel, volt, watt } from '../../core/say.ts'
import type { PowerBudgetSections } from '../../schema/power-budget.ts'

/** What ends the loudness, as a sentence; the clip point needs none. */
const LIMIT = {
  clipping: '',
  'source-level': ' The level of the audio source ends the loudness before the amplifier clips.',
  'supply-current': ' The current of the source ends the loudness before the amplifier clips.',
} satisfies Record<PowerBudgetSections['power']['limitedBy'], string>

/** The sentences of `/v1/power-budget`. */
export function powerBudgetAnswer({ power, supply }: PowerBudgetSections): string {
  const of =
    supply.currentLimitA === null ? '' : ` of the ${ampere(supply.currentLimitA)} the source can give`
  const left =
    supply.boardVoltageV === null
      ? 'the lead cannot deliver it'
      : `${volt(supply.boardVoltageV)} is left at the board`
  const pack =
    supply.levelSpanDb === null
      ? ''
      : ` From full to empty the pack loses ${decibel(supply.levelSpanDb)} of level.`
  const eighth =
    power.limitedBy === 'source-level'
      ? ''
      : ` (${ampere(supply.eighthPowerA)} by the rule of an eighth of the power, which loud music comes near)`
  return `Each channel gives ${watt(power.cleanPowerW)} clean on ${volt(supply.voltageV)}. At full volume the programme draws ${ampere(supply.programmeA)}${of}${eighth}, and ${left}.${LIMIT[power.limitedBy]}${pack}`
}
