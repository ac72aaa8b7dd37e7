import { type AsBuiltFacts, strengthOf, trimMm, wantedTubeMm } from '../as-built/facts.ts'
import type { FigureName } from '../as-built/judged.ts'
import { hertz, mm, say, significant } from '../say.ts'

/** The measured figure; 0 where the curve does not tell it, which no rule that applies sees. */
export const measured = ({ judged }: AsBuiltFacts, name: FigureName): number =>
  judged.get(name)?.row.measured ?? 0
/** The figure of the plan; 0 where it has none, as above. */
export const plannedOf = ({ judged }: AsBuiltFacts, name: FigureName): number =>
  judged.get(name)?.row.planned ?? 0

/** Whether a figure is surely more than the plan, beyond what is still good. */
export const isOver = (name: FigureName) => (facts: AsBuiltFacts) => strengthOf(facts, name) > 1
/** No lining absorbs more than this leaves; a lower Q is that of another box or driver. Common practice, no source. */
const LEAST_LINING_Q = 1.5

/** Whether a box would have to absorb more than any lining does. */
export const isBeyondLining = (facts: AsBuiltFacts): boolean =>
  isOver('absorptionQ')(facts) && measured(facts, 'absorptionQ') < LEAST_LINING_Q

/** Whether it is surely less. */
export const isUnder = (name: FigureName) => (facts: AsBuiltFacts) => strengthOf(facts, name) < -1
/** How far off it is, in multiples of what is still good. */
export const size = (name: FigureName) => (facts: AsBuiltFacts) => Math.abs(strengthOf(facts, name))

/** A loss Q beside the planned one. */
export const qText = (facts: AsBuiltFacts, name: FigureName): string => {
  const planned = facts.judged.get(name)?.row.planned ?? null
  return `${significant(measured(facts, name), 2)} instead of ${planned === null ? 'none' : significant(planned, 2)}`
}

/** The 95 % interval in brackets; nothing where the data set no such ends. */
export const rangeText = (facts: AsBuiltFacts, name: FigureName, unit: string): string => {
  const { from = null, to = null } = facts.judged.get(name)?.row ?? {}
  if (from === null || to === null) return ''
  return ` (95 %: ${significant(from, 3)} to ${unit === '' ? significant(to, 3) : say(to, unit)})`
}

/** The tuning beside the planned one, a clause. */
export const tuningText = (facts: AsBuiltFacts): string =>
  `the box is tuned to ${hertz(measured(facts, 'tuningHz'))}${rangeText(facts, 'tuningHz', 'Hz')} instead of ${hertz(plannedOf(facts, 'tuningHz'))}`

/** What to do at the port for the planned tuning on the volume that the box has. */
export function trimRemedies(facts: AsBuiltFacts): string[] {
  const trim = trimMm(facts)
  const wanted = wantedTubeMm(facts)
  if (trim === null || wanted === null) return []
  const within = ` (95 %: ${mm(Math.abs(trim.from))} to ${mm(Math.abs(trim.to))})`
  if (trim.value < 0) return [`Make the port ${mm(-trim.value)} longer${within}, then measure again.`]
  return wanted > 0
    ? [`Cut ${mm(trim.value)} off the port${within}, a little less at first, then measure again.`]
    : ['No length of this port reaches the planned tuning on this volume: use a wider one.']
}
