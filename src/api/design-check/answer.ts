import { bySeverity } from '../../core/findings/rule.ts'
import { decibel, hertz, mm } from '../../core/say.ts'
import type { Design } from '../../schema/design.ts'
import type { DesignCheckSections } from '../../schema/design-check.ts'
import type { Finding } from '../../schema/frame.ts'

const plural = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`

function opening(findings: readonly Finding[]): string {
  const [first] = bySeverity(findings)
  const count = (severity: Finding['severity']) =>
    findings.filter((finding) => finding.severity === severity).length
  if (first?.severity === 'blocker')
    return `Do not build it like this (${plural(count('blocker'), 'blocker')}): ${first.message}`
  if (first?.severity === 'warning')
    return `Mind ${plural(count('warning'), 'warning')} first: ${first.message}`
  return 'Ready to build.'
}

function level({ loudness, limits }: DesignCheckSections): string {
  return loudness === null
    ? `${decibel(limits.maximumSplDb)} at 1 m`
    : `${decibel(loudness.programmeDb)} on average at ${loudness.distanceM} m`
}

/** The sentences of `/v1/design-check`: the verdict with its first reason, then what the build gives. */
export function designCheckAnswer(
  sections: DesignCheckSections,
  design: Design,
  findings: readonly Finding[],
): string {
  const { tuning, port } = sections
  const boxes = design.boxes ?? 1
  const reach = tuning.f3Hz === null ? 'at every frequency' : `down to ${hertz(tuning.f3Hz)}`
  const tube =
    port?.lengthMm === undefined || port.lengthMm === null ? '' : ` with a port of ${mm(port.lengthMm)}`
  return `${opening(findings)} ${boxes === 1 ? 'The box plays' : `The ${boxes} boxes play`} ${reach}${tube} and ${boxes === 1 ? 'reaches' : 'reach'} ${level(sections)}.`
}
