import type { CutListSections } from '../../schema/cut-list.ts'
import type { Design } from '../../schema/design.ts'
import type { LoadImpedanceSections } from '../../schema/load-impedance.ts'
import type { PowerBudgetSections } from '../../schema/power-budget.ts'
import type { Enclosure } from '../box/enclosure.ts'
import type { Loudspeaker } from '../box/loudspeaker.ts'
import type { ChannelPlan } from './channel-plan.ts'

/** What shopping list and test readings of a whole design look at. */
export interface DesignFacts {
  design: Design
  plan: ChannelPlan
  speaker: Loudspeaker
  enclosure: Enclosure
  load: LoadImpedanceSections
  power: PowerBudgetSections
  cut: CutListSections
}
