import { type AsBuiltFacts, resonanceInsteadHz, volumeOffL } from '../as-built/facts.ts'
import { hertz, litre, ohm, significant } from '../say.ts'
import type { CauseRule } from './as-built.ts'
import {
  isBeyondLining,
  isOver,
  isUnder,
  measured,
  plannedOf,
  qText,
  rangeText,
  size,
  trimRemedies,
} from './as-built-text.ts'

/** A closed box does not show the driver's own friction apart from absorption. */
const isClosed = ({ planned, best }: AsBuiltFacts): boolean =>
  planned.speaker.opening === null || best?.story.blocked === true

/** What would look the same in this curve as another volume. */
function insteadOfVolume(facts: AsBuiltFacts): string {
  if (isClosed(facts)) {
    const hz = resonanceInsteadHz(facts)
    return hz === null
      ? 'One peak does not tell a volume from a suspension: the driver data may be off instead.'
      : `One peak does not tell a volume from a suspension: the planned volume with a driver of fs ${hertz(hz)} instead of ${hertz(facts.planned.speaker.driver.fsHz)} explains it as well.`
  }
  const percent = 100 * Math.abs(Math.exp(facts.best?.built.air ?? 0) - 1)
  const direction = volumeOffL(facts) < 0 ? 'less' : 'more'
  return `The planned volume with ${significant(percent, 2)} % ${direction} moving mass than in the driver data explains it as well.`
}

const sealing =
  'Sealants and glues give off vapour: ventilate, and follow what their makers say on gloves and breathing.'
const volumeCommon = {
  severity: 'warning',
  at: '/design/box',
  unit: 'L',
  value: (facts: AsBuiltFacts) => measured(facts, 'effectiveVolumeL'),
  limit: (facts: AsBuiltFacts) => plannedOf(facts, 'effectiveVolumeL'),
  strength: size('effectiveVolumeL'),
} as const

/** Resistance off by a driver that is open, shorted or joined otherwise is no resistance of leads. */
const isOfLeads = ({ best }: AsBuiltFacts): boolean =>
  best?.story.fault === 'none' ||
  best?.story.fault === 'port-blocked' ||
  best?.story.fault === 'driver-reversed'

/** Volume and losses of the box itself, and resistance in series. */
export const asBuiltBoxRules: readonly CauseRule[] = [
  {
    code: 'as-built-leak',
    severity: 'warning',
    at: '/design/box/leakageQ',
    when: isOver('leakageQ'),
    value: (facts) => measured(facts, 'leakageQ'),
    limit: (facts) => plannedOf(facts, 'leakageQ'),
    strength: size('leakageQ'),
    message: (facts) =>
      `The box leaks: the Q of its leak (QL) is ${qText(facts, 'leakageQ')}${rangeText(facts, 'leakageQ', '')}. A leak takes bass and lets the cone travel further.`,
    remedies: () => [
      'Hold a moist finger or a feather along the joints and round the drivers while a low tone plays; air shows where it hisses.',
      'Put a gasket under the driver and the terminals, seal the joints from inside and the hole of the lead.',
      'A porous dust cap or surround of the driver leaks as well: seal nothing there, compare with another driver.',
    ],
    caution: sealing,
  },
  {
    code: 'as-built-lining-dense',
    severity: 'warning',
    at: '/design/box/lining',
    when: (facts) => isOver('absorptionQ')(facts) && !isBeyondLining(facts),
    value: (facts) => measured(facts, 'absorptionQ'),
    limit: (facts) => plannedOf(facts, 'absorptionQ'),
    strength: size('absorptionQ'),
    message: (facts) =>
      `The box absorbs too much: the Q of its absorption (QA) is ${qText(facts, 'absorptionQ')}${rangeText(facts, 'absorptionQ', '')}. There is more lining than planned, or it is denser${
        isClosed(facts)
          ? '; more friction in the driver than its Qms says looks the same'
          : ', or it lies before the port'
      }.`,
    remedies: () => [
      'Take out half of the lining, keep it away from the port, and measure again.',
      'Or put the lining as built into the design.',
    ],
  },
  {
    code: 'as-built-losses-high',
    severity: 'warning',
    at: '/design/box',
    when: (facts) => isOver('lossQ')(facts) && !isOver('leakageQ')(facts) && !isOver('absorptionQ')(facts),
    value: (facts) => measured(facts, 'lossQ'),
    limit: (facts) => plannedOf(facts, 'lossQ'),
    strength: size('lossQ'),
    message: (facts) =>
      `The box loses too much: all losses together are Q ${qText(facts, 'lossQ')}. The curve does not tell whether a leak or too much lining explains it; both do.`,
    remedies: () => [
      'Seal the joints and measure again; if nothing changes, take out half of the lining and measure again.',
      'Repeat the sweep with more points from half the lower to twice the upper peak, and with phase: that tells them apart.',
    ],
    caution: sealing,
  },
  {
    ...volumeCommon,
    code: 'as-built-volume-small',
    when: isUnder('effectiveVolumeL'),
    message: (facts) =>
      `The cone feels ${litre(measured(facts, 'effectiveVolumeL'))} of air${rangeText(facts, 'effectiveVolumeL', 'L')} instead of ${litre(plannedOf(facts, 'effectiveVolumeL'))}: ${litre(-volumeOffL(facts))} of space are missing. ${insteadOfVolume(facts)}`,
    remedies: (facts) => [
      'Count again what stands inside: braces, drivers, tube, amplifier and the thickness of the board; put what was forgotten into the design (braceL, electronicsL, displacementL).',
      ...trimRemedies(facts),
      'Measure the driver alone, free air and with an added mass, to be sure of its data.',
    ],
  },
  {
    ...volumeCommon,
    code: 'as-built-volume-large',
    when: isOver('effectiveVolumeL'),
    message: (facts) =>
      `The cone feels ${litre(measured(facts, 'effectiveVolumeL'))} of air${rangeText(facts, 'effectiveVolumeL', 'L')} instead of ${litre(plannedOf(facts, 'effectiveVolumeL'))}: ${litre(volumeOffL(facts))} more space than planned. ${insteadOfVolume(facts)}`,
    remedies: (facts) => [
      'See whether lining was put in that the plan does not have: it makes the air softer; or whether a part was left out of the box.',
      ...trimRemedies(facts),
      'Fill the difference with a block of wood, or put the volume as built into the design.',
    ],
  },
  {
    code: 'as-built-resistance-high',
    severity: 'warning',
    at: '/design/wiring',
    unit: 'ohm',
    when: (facts) => isOfLeads(facts) && isOver('meterOhm')(facts),
    value: (facts) => measured(facts, 'meterOhm'),
    limit: (facts) => plannedOf(facts, 'meterOhm'),
    strength: size('meterOhm'),
    message: (facts) =>
      `There are ${ohm(measured(facts, 'meterOhm') - plannedOf(facts, 'meterOhm'))} too much in series: ${ohm(measured(facts, 'meterOhm'))}${rangeText(facts, 'meterOhm', 'ohm')} at the terminals instead of ${ohm(plannedOf(facts, 'meterOhm'))}. Thin or long leads or a bad joint do that; a voice coil of higher resistance than its data looks the same.`,
    remedies: () => [
      'Measure each driver alone at its own terminals with a meter: what is left sits in leads and joints.',
      'Renew crimped or dry joints, use thicker leads, clean the contacts.',
      'If the leads of the instrument were not taken off, give their resistance as leadOhm.',
    ],
  },
  {
    code: 'as-built-resistance-low',
    severity: 'warning',
    at: '/design/wiring',
    unit: 'ohm',
    when: (facts) => isOfLeads(facts) && isUnder('meterOhm')(facts),
    value: (facts) => measured(facts, 'meterOhm'),
    limit: (facts) => plannedOf(facts, 'meterOhm'),
    strength: size('meterOhm'),
    message: (facts) =>
      `The resistance at the terminals is ${ohm(measured(facts, 'meterOhm'))}${rangeText(facts, 'meterOhm', 'ohm')} instead of ${ohm(plannedOf(facts, 'meterOhm'))}: another driver than planned, turns of a coil that touch, or a scale error of the instrument.`,
    remedies: () => [
      'Measure a resistor of known value with the same instrument.',
      'Measure each driver alone with a meter, and put what it reads into the design.',
      'If leadOhm was given, measure lead and clips again, the probes held together: too much of it looks the same.',
    ],
  },
]
