import type { AsBuiltSections } from '../../schema/as-built.ts'
import { type ComplexCurve, moduli, phasesDeg } from '../complex-curve.ts'
import type { MeasuredSweep } from '../measurement/sweep.ts'
import { asPlanned } from './built-circuit.ts'
import type { StoryFit } from './fit-story.ts'
import type { PlannedBox } from './planned-box.ts'
import { storiesOf } from './stories.ts'
import { terminalImpedance } from './terminals.ts'

/** Impedance of the box as planned on a grid (> 0, Hz), lead included, ohm. */
export const plannedImpedance = (
  planned: PlannedBox,
  frequencyHz: Float64Array,
  leadOhm: number,
): ComplexCurve =>
  terminalImpedance(planned, storiesOf(planned)[0], asPlanned(planned.speaker), frequencyHz, leadOhm)

/** The `impedance` section: measured, fitted and planned on the frequencies of the sweep. */
export function curvesOf(
  planned: PlannedBox,
  { frequencyHz, ohm, phaseDeg }: MeasuredSweep,
  best: StoryFit | null,
  leadOhm: number,
): AsBuiltSections['impedance'] {
  const plan = plannedImpedance(planned, frequencyHz, leadOhm)
  return {
    frequencyHz: [...frequencyHz],
    measuredOhm: [...ohm],
    measuredPhaseDeg: phaseDeg === null ? [] : [...phaseDeg],
    fittedOhm:
      best === null ? [] : moduli(terminalImpedance(planned, best.story, best.built, frequencyHz, leadOhm)),
    plannedOhm: moduli(plan),
    plannedPhaseDeg: phasesDeg(plan),
  }
}
