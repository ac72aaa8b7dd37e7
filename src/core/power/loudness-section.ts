import type { Wants } from '../../schema/design.ts'
import type { PowerBudgetSections } from '../../schema/power-budget.ts'
import type { BudgetInput } from './budget-input.ts'
import { levelAtListenerDb, safeHoursADay } from './loudness.ts'
import { averagePowerW, CREST_DB } from './supply-current.ts'

/** How loud all channels together get at the listener; null when the sensitivity is not known. */
export function loudnessSection(
  { amplifier, programme }: BudgetInput,
  cleanPowerW: number,
  wants: Wants | undefined,
  sensitivity1W1mDb: number | undefined,
): PowerBudgetSections['loudness'] {
  if (sensitivity1W1mDb === undefined) return null
  const distanceM = wants?.listeningDistanceM ?? 1
  const levelOf = (powerW: number) =>
    levelAtListenerDb(sensitivity1W1mDb, powerW, amplifier.channels, distanceM)
  const programmeDb = levelOf(averagePowerW(cleanPowerW, CREST_DB[programme]))
  const wantedDb = wants?.loudnessDb ?? null
  return {
    peakDb: levelOf(cleanPowerW),
    programmeDb,
    distanceM,
    wantedDb,
    marginDb: wantedDb === null ? null : programmeDb - wantedDb,
    safeHoursADay: safeHoursADay(programmeDb),
  }
}
