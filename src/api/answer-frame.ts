import { evaluateWorking } from '../core/evaluate-working.ts'
import { bySeverity, verdictOf } from '../core/findings/rule.ts'
import type { Outcome } from '../core/outcome.ts'
import type { Assumption, Finding, Verdict, WorkingStep } from '../schema/frame.ts'

/** The members every answer begins with. */
export interface Frame {
  answer: string
  verdict: Verdict
  findings: Finding[]
  assumptions: Assumption[]
  cautions: string[]
  working?: WorkingStep[]
}

/** Puts the outcome of a calculation behind the frame; the working only when it is wanted. */
export async function framed<Sections>(
  outcome: Outcome<Sections>,
  answer: string,
  wantsWorking: boolean,
): Promise<Frame & Sections> {
  return {
    answer,
    verdict: verdictOf(outcome.findings),
    findings: bySeverity(outcome.findings),
    assumptions: outcome.assumptions,
    cautions: [...new Set(outcome.cautions)],
    ...(wantsWorking && { working: await evaluateWorking(outcome.working) }),
    ...outcome.sections,
  }
}
