import type { AsBuiltSections } from '../../schema/as-built.ts'
import type { AsBuiltFacts } from './facts.ts'
import type { FigureName } from './judged.ts'

/** The `built` section: every figure with its interval, null where the curve does not tell it. */
export function builtSection(facts: AsBuiltFacts, box: string): AsBuiltSections['built'] {
  const { best, judged, lossesToldApart } = facts
  const estimate = (name: FigureName) => {
    const row = judged.get(name)?.row
    return row === undefined ? null : { value: row.measured, from: row.from, to: row.to }
  }
  return {
    box,
    state: best === null ? 'not-found' : best.story.fault === 'none' ? 'as-wired' : best.story.fault,
    tuningHz: estimate('tuningHz'),
    resonanceHz: estimate('resonanceHz'),
    qtc: estimate('qtc'),
    effectiveVolumeL: estimate('effectiveVolumeL'),
    tubeLengthMm: estimate('tubeLengthMm'),
    leakageQ: estimate('leakageQ'),
    absorptionQ: estimate('absorptionQ'),
    lossQ: estimate('lossQ'),
    lossesToldApart,
    meterOhm: estimate('meterOhm'),
    driverResonanceHz: estimate('driverResonanceHz'),
    driverQms: estimate('driverQms'),
    motorStrengthTm: estimate('motorStrengthTm'),
    misfitPercent: best === null ? null : 100 * best.misfit,
  }
}
