import type { AsBuiltSections } from '../../schema/as-built.ts'
import type { Finding } from '../../schema/frame.ts'
import type { AsBuiltFacts } from '../as-built/facts.ts'
import { apply, type Rule } from './rule.ts'

/** A likely cause as a row: a rule, and how far beyond what is still good the box is when it applies. */
export interface CauseRule extends Rule<AsBuiltFacts> {
  strength: (facts: AsBuiltFacts) => number
}

/** The causes that apply, strongest first, as findings and as the ranking of the answer. */
export function rankedCauses(
  rules: readonly CauseRule[],
  facts: AsBuiltFacts,
): { causes: AsBuiltSections['causes']; findings: Finding[] } {
  const ranked = rules
    .filter((rule) => rule.when(facts))
    .map((rule) => ({ rule, strength: rule.strength(facts) }))
    .sort((a, b) => b.strength - a.strength)
  return {
    causes: ranked.map(({ rule, strength }) => ({ code: rule.code, strength })),
    findings: apply(
      ranked.map(({ rule }) => rule),
      facts,
    ),
  }
}
