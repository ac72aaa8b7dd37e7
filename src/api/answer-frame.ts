import { evaluateWorking } from '../core/evaluate-working.ts'
import { bySeverity, verdictOf } from '../core/findings/rule.ts'
import type { Outcome } from '../core/outcome.ts'
import type { Assumption, Finding, Verdict, WorkingStep } from '../schema/frame.ts'
import { nearestGiven } from './nearest-given.ts'

/** The members every answer begins with. */
export interface Frame {
  answer: string
  verdict: Verdict
  findings: Finding[]
  assumptions: Assumption[]
  cautions: string[]
  working?: WorkingStep[]
}

/** What the frame needs besides the outcome. */
interface Framing {
  /** What the calculation itself says. */
  sentence: string
  /** The request as it was read: every finding points at something in it. */
  request: unknown
  wantsWorking: boolean
}

/** Puts the outcome of a calculation behind the frame; the working only when it is wanted. */
export async function framed<Sections>(
  outcome: Outcome<Sections>,
  { sentence, request, wantsWorking }: Framing,
): Promise<Frame & Sections> {
  const findings = bySeverity(outcome.findings).map((finding) => ({
    ...finding,
    at: nearestGiven(finding.at, request),
  }))
  return {
    answer: warned(sentence, findings),
    verdict: verdictOf(findings),
    findings,
    assumptions: outcome.assumptions,
    cautions: [...new Set(outcome.cautions)],
    ...(wantsWorking && { working: await evaluateWorking(outcome.working) }),
    ...outcome.sections,
  }
}

/** A blocked answer says so first: the sentence may be all that a bot reads out. */
function warned(sentence: string, findings: readonly Finding[]): string {
  const blocker = findings.find(({ severity }) => severity === 'blocker')
  return blocker === undefined ? sentence : `Do not build it like this: ${ended(blocker.message)} ${sentence}`
}

const ended = (message: string): string => (/[.!?]$/.test(message) ? message : `${message}.`)
