import type { PowerBudgetSections } from '../../schema/power-budget.ts'
import { decibel, hertz, say, volt } from '../say.ts'
import type { PowerFacts } from './power-facts.ts'
import { put, type Remedy, remedy, takeOut } from './remedy.ts'
import type { Rule } from './rule.ts'
import {
  closer,
  dimmerIndicator,
  LOUDER,
  largerCapacitor,
  otherGain,
  redIndicator,
  smallerControl,
} from './signal-remedies.ts'

type LimitedBy = PowerBudgetSections['power']['limitedBy']

/** Limits of the level the source brings, dB re the clip point, and of loudness. Common practice, no source. */
const TOO_WEAK_DB = -3
const TOO_HOT_DB = 12
const QUIETER_DB = 3
/** A control above half the input resistance is bent by it. Common practice, no source. */
const CONTROL_SHARE = 0.5
/** A smaller control loads the source. Common practice, no source. */
const LEAST_CONTROL_OHM = 5000

/** An ordinary resistor of 0.25 W at half its load. Common practice, no source. */
const ORDINARY_RESISTOR_MW = 125

const overdriveDb = ({ sections }: PowerFacts) => sections.gain?.overdriveDb ?? 0
const cornerHz = ({ sections }: PowerFacts) => sections.gain?.couplingCornerHz ?? 0
const thirdHz = ({ lowestWantedHz = Number.POSITIVE_INFINITY }: PowerFacts) => lowestWantedHz / 3
const wantedDb = ({ sections }: PowerFacts) => sections.loudness?.wantedDb ?? Number.NEGATIVE_INFINITY
const peakDb = ({ sections }: PowerFacts) => sections.loudness?.peakDb ?? 0
const programmeDb = ({ sections }: PowerFacts) => sections.loudness?.programmeDb ?? 0
const controlOhm = ({ signal }: PowerFacts) => 1000 * (signal?.volumeControl?.resistanceKohm ?? 0)

const largestControlOhm = ({ inputResistanceOhm }: PowerFacts) => CONTROL_SHARE * inputResistanceOhm

const limitedBy = ({ sections }: PowerFacts) => sections.power.limitedBy

const louder = (facts: PowerFacts, gains: 'peaks' | 'programme'): Remedy[] => [
  closer(facts, gains),
  ...LOUDER[limitedBy(facts)](facts, gains),
  'Use more sensitive drivers.',
]

const PEAKS_REACH = {
  clipping: 'Even a full sine reaches',
  'source-level': 'A sine as loud as the audio source can make it reaches',
  'supply-current': 'Even peaks at full volume reach',
} satisfies Record<LimitedBy, string>

const PROGRAMME_AVERAGES = {
  clipping: 'with peaks just clean the programme averages',
  'source-level': 'at the full level of the audio source the programme averages',
  'supply-current': 'the current of the supply holds the programme at',
} satisfies Record<LimitedBy, string>

const besideMusic = (errorDb: number): string =>
  errorDb < 0 ? `${decibel(-errorDb)} below the music` : `${decibel(errorDb)} above the music itself`

export const signalRules: readonly Rule<PowerFacts>[] = [
  {
    code: 'wanted-loudness-out-of-reach',
    severity: 'warning',
    at: '/wants/loudnessDb',
    unit: 'dB',
    when: (facts) => peakDb(facts) < wantedDb(facts),
    value: peakDb,
    limit: wantedDb,
    message: (facts) =>
      `${PEAKS_REACH[limitedBy(facts)]} only ${decibel(peakDb(facts))} at the listener; ${decibel(wantedDb(facts))} is wanted.`,
    remedies: (facts) => louder(facts, 'peaks'),
  },
  {
    code: 'programme-quieter-than-wanted',
    severity: 'note',
    at: '/wants/loudnessDb',
    unit: 'dB',
    when: (facts) => peakDb(facts) >= wantedDb(facts) && programmeDb(facts) < wantedDb(facts) - QUIETER_DB,
    value: programmeDb,
    limit: wantedDb,
    message: (facts) =>
      `Peaks reach the ${decibel(wantedDb(facts))} wanted, but ${PROGRAMME_AVERAGES[limitedBy(facts)]} ${decibel(programmeDb(facts))} at the listener.`,
    remedies: (facts) => louder(facts, 'programme'),
  },
  {
    code: 'source-level-too-low',
    severity: 'note',
    at: '/signal/sourceLevelV',
    unit: 'dB',
    when: (facts) => overdriveDb(facts) < TOO_WEAK_DB,
    value: overdriveDb,
    limit: () => TOO_WEAK_DB,
    message: (facts) =>
      `The source ends ${decibel(-overdriveDb(facts))} below full power; clipping would take ${volt(facts.sections.gain?.clipAtSourceV ?? 0)}.`,
    remedies: (facts) => [otherGain(facts, 'higher'), 'Use the line output of the source.'],
  },
  {
    code: 'source-level-too-high',
    severity: 'note',
    at: '/signal/sourceLevelV',
    unit: 'dB',
    when: (facts) => overdriveDb(facts) > TOO_HOT_DB,
    value: overdriveDb,
    limit: () => TOO_HOT_DB,
    message: (facts) =>
      `With the knob open the source overdrives by ${decibel(overdriveDb(facts))}: all use is in the first part of the turn.`,
    remedies: (facts) => [
      `Put a pad of ${decibel(overdriveDb(facts))} before the volume control.`,
      otherGain(facts, 'lower'),
    ],
  },
  {
    code: 'coupling-corner-too-high',
    severity: 'note',
    at: '/signal/inputCapacitorUf',
    unit: 'Hz',
    when: (facts) => cornerHz(facts) > thirdHz(facts),
    value: cornerHz,
    limit: thirdHz,
    message: (facts) =>
      `The coupling capacitor falls off below ${hertz(cornerHz(facts))}; a third of the lowest wanted note is ${hertz(thirdHz(facts))}.`,
    remedies: (facts) => [
      largerCapacitor(facts, thirdHz(facts)),
      'Leave it on purpose, as a high-pass that protects the cone below the tuning of the box.',
    ],
  },
  {
    code: 'volume-control-loaded',
    severity: 'note',
    at: '/signal/volumeControl/resistanceKohm',
    unit: 'kohm',
    when: (facts) => controlOhm(facts) > largestControlOhm(facts),
    value: (facts) => controlOhm(facts) / 1000,
    limit: (facts) => largestControlOhm(facts) / 1000,
    message: (facts) =>
      `The amplifier input of ${say(facts.inputResistanceOhm / 1000, 'kohm')} bends the law of a ${say(controlOhm(facts) / 1000, 'kohm')} control.`,
    remedies: (facts) => [
      ...smallerControl(largestControlOhm(facts), LEAST_CONTROL_OHM),
      'Live with it: it only gets loud later in the turn.',
    ],
  },
  {
    code: 'source-and-amplifier-share-supply',
    severity: 'note',
    at: '/supply/sharedWithSource',
    unit: 'mV',
    when: ({ groundError }) => groundError !== null,
    value: ({ groundError }) => 1000 * (groundError?.errorV ?? 0),
    message: ({ groundError }) =>
      `Source and amplifier hang on one supply: the bass current flows through the audio shield too and adds about ${say(1000 * (groundError?.errorV ?? 0), 'mV')}, ${besideMusic(groundError?.errorDb ?? 0)}, as hum and whine.`,
    remedies: () => [
      remedy('Feed the amplifier from another supply.', [put('/supply/sharedWithSource', false)]),
      'Shorten and thicken the ground lead of the supply.',
      'Put an audio transformer 1:1, 600 ohm, in each channel.',
      'Use an isolated converter with a filter, sized for the peak current.',
      'Use a board with a difference input.',
      'Use a radio link with its own supply. Never lift a protective earth.',
    ],
  },
  {
    code: 'indicator-resistor-too-hot',
    severity: 'warning',
    at: '/supply/indicator',
    unit: 'mW',
    when: ({ sections }) => (sections.indicator?.dissipationMw ?? 0) > ORDINARY_RESISTOR_MW,
    value: ({ sections }) => sections.indicator?.dissipationMw ?? 0,
    limit: () => ORDINARY_RESISTOR_MW,
    message: ({ sections }) =>
      `The resistor of the indicator turns ${say(sections.indicator?.dissipationMw ?? 0, 'mW')} into heat; an ordinary one of 0.25 W should have ${say(ORDINARY_RESISTOR_MW, 'mW')} at the most.`,
    remedies: (facts) => [
      dimmerIndicator(facts),
      `Buy a resistor of ${say(facts.sections.indicator?.resistorRatingW ?? 0, 'W')} and keep it off wires and lining.`,
    ],
    caution: 'A resistor loaded to its rating burns skin and melts insulation: mount it clear of both.',
  },
  {
    code: 'indicator-stays-dark',
    severity: 'note',
    at: '/supply/indicator',
    unit: 'V',
    when: ({ sections }) => sections.indicator !== null && sections.indicator.resistorOhm === null,
    value: ({ source }) => source.voltageV,
    message: ({ source }) => `${volt(source.voltageV)} is too low for this indicator.`,
    remedies: (facts) => [
      redIndicator(facts),
      remedy('Leave the indicator out.', [takeOut('/supply/indicator')]),
    ],
  },
]
