import type { AsBuiltFacts } from '../as-built/facts.ts'
import type { Story } from '../as-built/stories.ts'
import { terminalMeterOhm } from '../as-built/terminals.ts'
import { ohm, significant } from '../say.ts'
import type { CauseRule } from './as-built.ts'

const isStory =
  (fault: Story['fault']) =>
  ({ best }: AsBuiltFacts): boolean =>
    best?.story.fault === fault

/** A fault of the circuit itself comes before every figure that is merely off. */
const FAULT_STRENGTH = 100

const measuredOhm = ({ best, planned }: AsBuiltFacts): number =>
  best === null ? 0 : (terminalMeterOhm(planned, best.story, best.built.series) ?? 0)

const meterText = (facts: AsBuiltFacts): string => {
  const { meterOhm } = facts.planned
  return meterOhm === null
    ? ''
    : ` A meter should read ${ohm(measuredOhm(facts))} at the terminals, not the planned ${ohm(meterOhm)}.`
}

const unplug =
  'Unplug the amplifier before any wire is touched, and let its supply empty. Solder where the air moves, with eye protection, as the makers of iron and solder say.'

const common = { strength: () => FAULT_STRENGTH }

/** Faults of wiring and port that change the circuit itself. */
export const asBuiltWiringRules: readonly CauseRule[] = [
  {
    ...common,
    code: 'as-built-driver-reversed',
    severity: 'warning',
    at: '/design/wiring',
    when: isStory('driver-reversed'),
    message: ({ planned }) =>
      `One of the ${planned.driven} drivers is connected backwards: ${
        planned.driven === 2
          ? 'the two push air to and fro between them, so the impedance is that of free air, one peak without any trace of the box, and there is no bass'
          : 'it works against the others, so the curve is partly that of free air and most of the bass is lost'
      }.`,
    remedies: () => [
      'Swap the two leads at one driver. Touch a 1.5 V cell to each driver for a moment: all cones must move the same way.',
      'Then measure the sweep again: two peaks of a vented box, or the peak of a closed one, must be back.',
    ],
    caution: unplug,
  },
  {
    ...common,
    code: 'as-built-driver-open',
    severity: 'warning',
    at: '/design/wiring',
    unit: 'ohm',
    when: isStory('driver-open'),
    value: measuredOhm,
    limit: ({ planned }) => planned.meterOhm ?? 0,
    message: (facts) =>
      `One of the ${facts.planned.driven} drivers in parallel does not play: its coil, a lead or a joint is open, and its cone only moves along with the air.${meterText(facts)}`,
    remedies: () => [
      'Look for the lead that came off or the dry solder joint.',
      'Measure each driver alone with a meter, leads off: an open coil reads nothing, and the driver is dead.',
    ],
    caution: unplug,
  },
  {
    ...common,
    code: 'as-built-driver-shorted',
    severity: 'blocker',
    at: '/design/wiring',
    unit: 'ohm',
    when: isStory('driver-shorted'),
    value: measuredOhm,
    limit: ({ planned }) => planned.meterOhm ?? 0,
    message: (facts) =>
      `One of the ${facts.planned.driven} drivers in series is shorted: its terminals touch, or its coil has burnt together. The amplifier sees too little.${meterText(facts)}`,
    remedies: () => [
      'Look for a strand of wire or a blob of solder across two terminals.',
      'Measure each driver alone with a meter, leads off: one that reads next to nothing is dead.',
    ],
    caution: unplug,
  },
  {
    ...common,
    code: 'as-built-joined-other-way',
    severity: 'blocker',
    at: '/design/wiring',
    unit: 'ohm',
    when: isStory('other-joint'),
    value: measuredOhm,
    limit: ({ planned }) => planned.meterOhm ?? 0,
    message: (facts) =>
      `The drivers are joined in ${facts.best?.story.joint ?? 'another way'}, not in ${facts.planned.joint ?? 'the planned way'}: the impedance is ${significant(measuredOhm(facts) / (facts.planned.meterOhm ?? 1), 2)} times the planned one.${meterText(facts)}`,
    remedies: () => [
      'Wire them as planned before the amplifier is connected.',
      'Or put the wiring that was built into the design and check it against the amplifier.',
    ],
    caution: unplug,
  },
  {
    ...common,
    code: 'as-built-port-blocked',
    severity: 'warning',
    at: ({ planned }) =>
      planned.speaker.opening?.kind === 'radiator' ? '/design/passiveRadiator' : '/design/port',
    when: isStory('port-blocked'),
    message: ({ planned }) =>
      planned.speaker.opening?.kind === 'radiator'
        ? 'The box behaves as a closed one: one peak only. The passive radiator does not move.'
        : 'The box behaves as a closed one: one peak only. The port is blocked, or it ends against a wall or in the lining.',
    remedies: ({ planned }) =>
      planned.speaker.opening?.kind === 'radiator'
        ? [
            'Push the cone of the radiator gently: it must move freely. Take out what touches it.',
            'See whether its cut-out was really sawn through.',
          ]
        : [
            'Look into the port: take out lining, tape or what has fallen in, and keep one inner diameter free behind its end.',
            'See whether its hole was really sawn through.',
          ],
  },
]
