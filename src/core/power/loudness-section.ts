import type { Wants } from '../../schema/design.ts'
import type { PowerBudgetSections } from '../../schema/power-budget.ts'
import type { BudgetInput } from './budget-input.ts'
import { levelAtListenerDb, safeHoursADay } from './loudness.ts'

/** How loud all channels together get at the listener; null when the sensitivity is not known. */
export function loudnessSection(
  { amplifier }: BudgetInput,
  { reachedPowerW, programmePowerW }: PowerBudgetSections['power'],
  wants: Wants | undefined,
  sensitivity1W1mDb: number | undefined,
): PowerBudgetSections['loudness'] {
  if (sensitivity1W1mDb === undefined) return null
  const distanceM = wants?.listeningDistanceM ?? 1
  const levelOf = (powerW: number) =>
    levelAtListenerDb(sensitivity1W1mDb, powerW, amplifier.channels, distanceM)
  const programmeDb = programmePowerW > 0 ? levelOf(programmePowerW) : null
  const wantedDb = wants?.loudnessDb ?? null
  return {
    peakDb: levelOf(reachedPowerW),
    programmeDb,
    distanceM,
    wantedDb,
    marginDb: wantedDb === null || programmeDb === null ? null : programmeDb - wantedDb,
    safeHoursADay: programmeDb === null ? 24 : safeHoursADay(programmeDb),
  }
}
