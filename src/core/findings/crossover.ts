import { decibel, hertz, watt } from '../say.ts'
import type { LoadFacts } from './load.ts'
import { putWithin, type Remedy, remedy } from './remedy.ts'
import { upToThree } from './rounded.ts'
import type { Rule } from './rule.ts'

/** A driver this far below the loudest in its best band adds nothing to the sound, dB. Common practice, no source. */
const UNHEARD_DB = -20
/** An ordinary small resistor, W. Common practice, no source. */
const ORDINARY_RESISTOR_W = 0.25
/** Said of a driver that no power reaches at all, dB. */
const LEAST_LEVEL_DB = -200

const unheard = ({ shares }: LoadFacts) =>
  shares.filter(({ levelDb }) => levelDb === null || levelDb < UNHEARD_DB)
/** Share of the power of the amplifier that reaches any driver, dB. */
const reachingDb = ({ shares }: LoadFacts) =>
  Math.max(LEAST_LEVEL_DB, 10 * Math.log10(shares.reduce((sum, { powerShare }) => sum + powerShare, 0)))
const unheardIds = (facts: LoadFacts) => [...new Set(unheard(facts).map(({ driver }) => `"${driver}"`))]
/** Highest resonance that a treble driver may have below the corner, Hz. */
const highestResonanceHz = ({ cornerHz }: LoadFacts) => (cornerHz ?? 0) / 2
const padW = ({ crossover }: LoadFacts) =>
  Math.max(0, ...crossover.map(({ padSeriesW, padShuntW }) => Math.max(padSeriesW ?? 0, padShuntW ?? 0)))

/** Corners of crossovers, Hz: the ends of the contract. */
const CORNERS_HZ = [50, 20_000] as const

function handedOver(leastHz: number): Remedy {
  const hz = upToThree(leastHz)
  return remedy(`Hand over at ${hertz(hz)} or above.`, putWithin('/crossover/cornerHz', hz, CORNERS_HZ))
}

/** About drivers behind coils and capacitors, and about the crossover that is wished. */
export const crossoverRules: readonly Rule<LoadFacts>[] = [
  {
    code: 'driver-gets-practically-nothing',
    severity: 'warning',
    at: ({ at }) => at,
    unit: 'dB',
    when: (facts) => unheard(facts).length > 0,
    value: (facts) => Math.min(...unheard(facts).map(({ levelDb }) => levelDb ?? LEAST_LEVEL_DB)),
    limit: () => UNHEARD_DB,
    message: (facts) =>
      `Even where it gets most, ${unheardIds(facts).join(', ')} stays more than ${decibel(-UNHEARD_DB)} below the loudest driver: a part of the wiring keeps the power from it.`,
    remedies: () => [
      'Check the values and the places of resistors, coils and capacitors: millihenry and microfarad, series and parallel.',
      'Leave the driver out.',
    ],
  },
  {
    code: 'parts-take-the-power',
    severity: 'warning',
    at: ({ at }) => at,
    unit: 'dB',
    when: (facts) => reachingDb(facts) < UNHEARD_DB,
    value: reachingDb,
    limit: () => UNHEARD_DB,
    message: (facts) =>
      `What reaches the drivers lies ${decibel(-reachingDb(facts))} below the power of the amplifier: other parts of the wiring turn the rest into heat.`,
    remedies: () => [
      'Take out what bridges the drivers, or the resistor in series with them.',
      'Check the values and the places of resistors, coils and capacitors.',
    ],
    caution:
      'A resistor in place of the drivers takes the whole power of the amplifier: it burns skin and may char wood and lining.',
  },
  {
    code: 'treble-resonance-near-corner',
    severity: 'warning',
    at: ({ treble, at }) => treble?.at ?? at,
    unit: 'Hz',
    when: (facts) => facts.cornerHz !== null && (facts.treble?.fsHz ?? 0) > highestResonanceHz(facts),
    value: ({ treble }) => treble?.fsHz ?? 0,
    limit: highestResonanceHz,
    message: (facts) =>
      `"${facts.treble?.id ?? ''}" resonates at ${hertz(facts.treble?.fsHz ?? 0)}, less than an octave below the corner of ${hertz(facts.cornerHz ?? 0)}: its impedance peak undoes the filter there, and it moves farther than it should.`,
    remedies: ({ treble, crossoverOrder }) => [
      handedOver(2 * (treble?.fsHz ?? 0)),
      ...(crossoverOrder === 1 ? ['Use a second-order crossover.'] : []),
      'Use a treble driver of a lower resonance.',
    ],
  },
  {
    code: 'crossover-reverse-one-driver',
    severity: 'note',
    at: '/crossover/order',
    when: ({ crossoverOrder, crossover }) => crossoverOrder === 2 && crossover.length > 1,
    message: () =>
      'In a second-order Linkwitz-Riley crossover the two drivers are half a cycle apart at the corner: wired alike they leave a hole there.',
    remedies: () => ['Swap the two leads of one driver, the treble one say; the sum is then flat.'],
  },
  {
    code: 'pad-runs-hot',
    severity: 'note',
    at: '/crossover/attenuationDb',
    unit: 'W',
    when: (facts) => padW(facts) > ORDINARY_RESISTOR_W,
    value: padW,
    limit: () => ORDINARY_RESISTOR_W,
    message: (facts) =>
      `A test tone at full power turns ${watt(padW(facts))} into heat in one resistor of the pad; music an eighth of that.`,
    remedies: ({ crossover }) => [
      `Buy resistors of ${watt(Math.max(...crossover.map(({ padRatingW }) => padRatingW ?? 0)))}, and mount them off wood, wires and lining.`,
    ],
    caution: 'A pad resistor on a full test tone burns skin: keep test tones short, let it cool.',
  },
]
