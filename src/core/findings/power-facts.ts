import type { Signal, Supply } from '../../schema/power.ts'
import type { PowerBudgetSections } from '../../schema/power-budget.ts'
import type { BudgetInput } from '../power/budget-input.ts'
import type { GroundError } from '../power/shared-ground.ts'

/** What one kind of driver with a rating gets at full volume, W. */
export interface DriverHeat {
  /** Where the rating is written. */
  at: string
  /** null when the request names no driver. */
  id: string | null
  ratedPowerW: number
  programmeW: number
  sineW: number
  /** Whether that is from a full pack, more than from the pack as it is on average. */
  isFullPack: boolean
}

/** What the rules about power, supply, reservoir and signal look at. */
export interface PowerFacts extends BudgetInput {
  sections: PowerBudgetSections
  /** Whether the rules about the load have already judged the lowest impedance. */
  isLoadJudged: boolean
  /** Where the load is written that its lowest impedance follows from. */
  loadAt: '/loadOhm' | '/minimumOhm'
  /** Whether a capacitor in the wiring keeps direct current from every driver. */
  blocksDirectCurrent: boolean
  /** Lowest impedance the amplifier allows, ohm. */
  allowedMinimumOhm: number
  /** Power the board draws in a full sine on all channels, W. */
  sineDrawW: number
  supply: Supply
  reservoirUf: number
  signal: Signal | undefined
  inputResistanceOhm: number
  /** What a supply shared with the audio source does; null when it is not shared. */
  groundError: GroundError | null
  lowestWantedHz: number | undefined
}
