import { verdictOf } from '../../core/findings/rule.ts'
import { decibel, hertz, mm } from '../../core/say.ts'
import type { Design } from '../../schema/design.ts'
import type { DesignCheckSections } from '../../schema/design-check.ts'
import type { Finding } from '../../schema/frame.ts'

const plural = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`

/** Nothing for a blocked design, which the frame opens. */
function opening(findings: readonly Finding[]): string {
  const verdict = verdictOf(findings)
  if (verdict === 'blocked') return ''
  if (verdict === 'ready') return 'Ready to build. '
  const warnings = findings.filter(({ severity }) => severity === 'warning')
  return `Mind ${plural(warnings.length, 'warning')} first: ${warnings[0]?.message} `
}

function level({ loudness, limits }: DesignCheckSections): string {
  return loudness === null || loudness.programmeDb === null
    ? `${decibel(limits.maximumSplDb)} at 1 m`
    : `${decibel(loudness.programmeDb)} on average at ${loudness.distanceM} m`
}

function reachOf({ f3Hz, f10Hz }: DesignCheckSections['tuning']): string {
  if (f3Hz !== null) return `down to ${hertz(f3Hz)}`
  return f10Hz === null ? 'at every frequency' : `without even bass (10 dB down at ${hertz(f10Hz)})`
}

/** The sentences of `/v1/design-check`: the verdict with its first reason, then what the build gives. */
export function designCheckAnswer(
  sections: DesignCheckSections,
  design: Design,
  findings: readonly Finding[],
): string {
  const { tuning, port } = sections
  const boxes = design.boxes ?? 1
  const reach = reachOf(tuning)
  const tube =
    port?.lengthMm === undefined || port.lengthMm === null ? '' : ` with a port of ${mm(port.lengthMm)}`
  return `${opening(findings)}${boxes === 1 ? 'The box plays' : `The ${boxes} boxes play`} ${reach}${tube} and ${boxes === 1 ? 'reaches' : 'reach'} ${level(sections)}.`
}
