import type { PowerBudgetSections } from '../../schema/power-budget.ts'

/** Where the power goes that a source gives, averages in W; it adds up. */
export interface EnergyFlow {
  currentA: number
  sourceW: number
  leadW: number
  boardW: number
  /** What the board and its lamp take without signal. */
  idleW: number
  outputHeatW: number
  loadsW: number
}

/**
 * The flow while the programme plays at full volume.
 * The board is taken to draw its power whatever voltage is left to it, as the power budget does, so the current in
 * the lead is that power over the voltage at the board. Of what is drawn beyond idling, the same share reaches the
 * loads as in a full sine. Derived from the energy balance.
 * @param channels  channels that play alike
 * @returns null when the lead cannot deliver that power
 */
export function energyFlow(
  { power, supply }: Pick<PowerBudgetSections, 'power' | 'supply'>,
  channels: number,
): EnergyFlow | null {
  const { voltageV, boardVoltageV, idleA, programmeA, sineA } = supply
  if (boardVoltageV === null || boardVoltageV === 0) return null
  const boardW = programmeA * voltageV
  const idleW = idleA * voltageV
  const currentA = boardW / boardVoltageV
  const shareOfSine = sineA > idleA ? (programmeA - idleA) / (sineA - idleA) : 0
  const loadsW = channels * power.cleanPowerW * shareOfSine
  return {
    currentA,
    sourceW: currentA * voltageV,
    leadW: currentA * (voltageV - boardVoltageV),
    boardW,
    idleW,
    outputHeatW: boardW - idleW - loadsW,
    loadsW,
  }
}
