import { hertz, litre, significant } from '../../core/say.ts'
import type { AsBuiltSections } from '../../schema/as-built.ts'
import type { Finding } from '../../schema/frame.ts'

function figuresText({ built }: AsBuiltSections): string {
  const { tuningHz, resonanceHz, qtc, effectiveVolumeL, lossQ } = built
  const parts = [
    tuningHz?.value != null && `is tuned to ${hertz(tuningHz.value)}`,
    resonanceHz?.value != null &&
      `has its resonance at ${hertz(resonanceHz.value)}${qtc?.value == null ? '' : ` with a total Q (Qtc) of ${significant(qtc.value, 2)}`}`,
    effectiveVolumeL?.value != null && `acts as ${litre(effectiveVolumeL.value)}`,
    lossQ?.value != null && `loses as much as Q ${significant(lossQ.value, 2)}`,
  ].filter((part) => part !== false)
  return parts.length === 0 ? '' : `The finished box ${parts.join(', ')}. `
}

/** The sentences of `/v1/as-built`: what the box is, then what most likely is wrong with it. */
export function asBuiltAnswer(sections: AsBuiltSections, findings: readonly Finding[]): string {
  const [cause] = sections.causes
  const first = findings.find(({ code }) => code === cause?.code) ?? findings[0]
  const more = sections.causes.length - 1
  const others = more > 0 ? ` ${more} more ${more === 1 ? 'cause' : 'causes'} in the findings.` : ''
  return `${figuresText(sections)}${first?.message ?? ''}${others}`.trim()
}
