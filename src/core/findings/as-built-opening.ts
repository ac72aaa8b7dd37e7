import { type AsBuiltFacts, radiatorOffG } from '../as-built/facts.ts'
import { mm, say } from '../say.ts'
import type { CauseRule } from './as-built.ts'
import {
  isOver,
  isUnder,
  measured,
  plannedOf,
  rangeText,
  size,
  trimRemedies,
  tuningText,
} from './as-built-text.ts'

const sawing = 'Clamp a tube before you saw it, and follow the manual of the tool; wear eye protection.'

const tubeCommon = {
  severity: 'warning',
  at: '/design/port/lengthMm',
  unit: 'mm',
  value: (facts: AsBuiltFacts) => measured(facts, 'tubeLengthMm'),
  limit: (facts: AsBuiltFacts) => plannedOf(facts, 'tubeLengthMm'),
  strength: size('tubeLengthMm'),
  remedies: trimRemedies,
} as const

const tubeText = (facts: AsBuiltFacts): string =>
  `acts as ${mm(measured(facts, 'tubeLengthMm'))} long${rangeText(facts, 'tubeLengthMm', 'mm')} instead of ${mm(plannedOf(facts, 'tubeLengthMm'))}; ${tuningText(facts)}`

const radiatorCommon = {
  severity: 'warning',
  at: '/design/passiveRadiator/addedMassG',
  unit: 'Hz',
  value: (facts: AsBuiltFacts) => measured(facts, 'tuningHz'),
  limit: (facts: AsBuiltFacts) => plannedOf(facts, 'tuningHz'),
  strength: size('tuningHz'),
} as const

const isRadiator = ({ planned }: AsBuiltFacts): boolean => planned.speaker.opening?.kind === 'radiator'

/** Port and passive radiator. */
export const asBuiltOpeningRules: readonly CauseRule[] = [
  {
    ...tubeCommon,
    code: 'as-built-tube-long',
    when: isOver('tubeLengthMm'),
    message: (facts) =>
      `The port ${tubeText(facts)}. It is too long, too narrow, or its end stands close to a wall or the lining.`,
    caution: sawing,
  },
  {
    ...tubeCommon,
    code: 'as-built-tube-short',
    when: isUnder('tubeLengthMm'),
    message: (facts) => `The port ${tubeText(facts)}. It is too short or too wide.`,
  },
  {
    ...radiatorCommon,
    code: 'as-built-radiator-light',
    when: (facts) => isRadiator(facts) && isOver('tuningHz')(facts),
    message: (facts) => `The passive radiator is too light for the plan: ${tuningText(facts)}.`,
    remedies: (facts) => [
      `Add ${say(-(radiatorOffG(facts) ?? 0), 'g')} to each radiator, in the middle, and measure again.`,
    ],
  },
  {
    ...radiatorCommon,
    code: 'as-built-radiator-heavy',
    when: (facts) => isRadiator(facts) && isUnder('tuningHz')(facts),
    message: (facts) => `The passive radiator is too heavy for the plan: ${tuningText(facts)}.`,
    remedies: (facts) => [
      `Take ${say(radiatorOffG(facts) ?? 0, 'g')} off each radiator, if so much was added, and measure again.`,
    ],
  },
]
