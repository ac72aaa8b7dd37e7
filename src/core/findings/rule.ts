import type { Finding, Severity, Verdict } from '../../schema/frame.ts'
import { isFix, type Remedy } from './remedy.ts'

/** One finding as a row: when it applies to the facts of its subject and what it then says. */
export interface Rule<Facts> {
  code: string
  severity: Severity
  /** JSON Pointer into the request. */
  at: string | ((facts: Facts) => string)
  when: (facts: Facts) => boolean
  value?: (facts: Facts) => number
  limit?: (facts: Facts) => number
  unit?: string
  message: (facts: Facts) => string
  /** What to do, cheapest first; with a patch where that is a plain change of the request. */
  remedies: (facts: Facts) => readonly Remedy[]
  /** Said once in `cautions` when the finding applies: where the work can hurt someone. */
  caution?: string
}

const RANK = { blocker: 0, warning: 1, note: 2 } satisfies Record<Severity, number>

/** The rules that apply, as findings, in the order of the table. */
export function apply<Facts>(rules: readonly Rule<Facts>[], facts: Facts): Finding[] {
  return rules
    .filter((rule) => rule.when(facts))
    .map((rule) => ({
      code: rule.code,
      severity: rule.severity,
      message: rule.message(facts),
      at: typeof rule.at === 'string' ? rule.at : rule.at(facts),
      ...(rule.value && { value: rule.value(facts) }),
      ...(rule.limit && { limit: rule.limit(facts) }),
      ...(rule.unit !== undefined && { unit: rule.unit }),
      ...told(rule.remedies(facts)),
    }))
}

/** The texts of all remedies, and those that change the request by themselves. */
function told(remedies: readonly Remedy[]): Pick<Finding, 'remedies' | 'fixes'> {
  const fixes = remedies.filter(isFix)
  return {
    remedies: remedies.map((remedy) => (isFix(remedy) ? remedy.do : remedy)),
    ...(fixes.length > 0 && { fixes }),
  }
}

/** The cautions that belong to the rules that apply, each once. */
export function cautionsOf<Facts>(rules: readonly Rule<Facts>[], facts: Facts): string[] {
  const cautions = new Set<string>()
  for (const { caution, when } of rules) if (caution !== undefined && when(facts)) cautions.add(caution)
  return [...cautions]
}

/** Most severe first; equal ones keep their order. */
export function bySeverity(findings: readonly Finding[]): Finding[] {
  return [...findings].sort((a, b) => RANK[a.severity] - RANK[b.severity])
}

/** blocked with a blocker, review with a warning, else ready. */
export function verdictOf(findings: readonly Finding[]): Verdict {
  if (findings.some((finding) => finding.severity === 'blocker')) return 'blocked'
  return findings.some((finding) => finding.severity === 'warning') ? 'review' : 'ready'
}
