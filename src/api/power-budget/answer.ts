import { ampere, volt, watt } from '../../core/say.ts'
import type { PowerBudgetSections } from '../../schema/power-budget.ts'

/** The sentence of `/v1/power-budget`. */
export function powerBudgetAnswer({ power, supply }: PowerBudgetSections): string {
  const of =
    supply.currentLimitA === null ? '' : ` of the ${ampere(supply.currentLimitA)} the source can give`
  const left =
    supply.boardVoltageV === null
      ? 'the lead cannot deliver it'
      : `${volt(supply.boardVoltageV)} is left at the board`
  return `Each channel gives ${watt(power.cleanPowerW)} clean on ${volt(supply.voltageV)}. At full volume the programme draws ${ampere(supply.programmeA)}${of}, squashed music up to about ${ampere(Math.max(supply.eighthPowerA, supply.programmeA))}, and ${left}.`
}
