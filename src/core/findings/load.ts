import type { LoadImpedanceSections } from '../../schema/load-impedance.ts'
import { believableResistanceOhm, isBelievable } from '../load/rated-impedance.ts'
import { speakerLead } from '../power/cable.ts'
import { decibel, hertz, ohm, significant, watt } from '../say.ts'
import { saidApart } from '../say-apart.ts'
import { put, putWithin, type Remedy, remedy, takeOut } from './remedy.ts'
import { downToThree } from './rounded.ts'
import type { Rule } from './rule.ts'

/** What the rules about the load look at. */
export interface LoadFacts extends LoadImpedanceSections {
  /** Where the wiring is written, or the drivers when it was left out. */
  at: string
  leadOhm: number
  /** Coils or capacitors in the wiring: unequal shares are then meant. */
  isFilter: boolean
  /** Order and corner of the crossover that is wished; null when none is. */
  crossoverOrder: number | null
  cornerHz: number | null
  /** The driver of two that plays the treble; null when it cannot be told or its resonance is not known. */
  treble: { at: string; id: string; fsHz: number } | null
  /** Ids of drivers with their own closed back that get the bass undiminished. */
  tweetersWithBass: string[]
}

/** What a driver of the load says of itself: its print and what a meter reads. */
export interface DriverPrint {
  /** Where the print is written. */
  at: string
  id: string
  reOhm: number
  ratedImpedanceOhm: number
}

/** Below this no amplifier of this kind drives anything. Common practice, no source. */
const SHORT_OHM = 0.5
/** Above this an amplifier for drivers gives next to nothing, ohm. Common practice, no source. */
const OPEN_OHM = 500
/** Aim for the loss in the lead, dB. Common practice, no source. */
const LEAD_LOSS_DB = 0.5
/** Level difference that is plainly heard, dB. Common practice, no source. */
const PLAIN_DIFFERENCE_DB = 3

const allowedOhm = ({ load }: LoadFacts) => load.allowedMinimumOhm ?? 0
/** Level of the quietest driver re the loudest of those that are to play alike: all of them, or those of its kind behind a filter. */
const quietest = ({ shares, isFilter }: LoadFacts): number =>
  Math.min(
    ...shares.map(({ driver, levelDb }) => {
      const alike = shares.filter((row) => !isFilter || row.driver === driver)
      return (levelDb ?? 0) - Math.max(...alike.map((row) => row.levelDb ?? 0))
    }),
  )

/** The figures of the load count the lead in; a short circuit leaves a thousandth of them behind it. */
const leadOf = ({ load, leadOhm }: LoadFacts) => {
  const behind = (ohms: number) => Math.max(ohms - leadOhm, ohms / 1000)
  return speakerLead(leadOhm, behind(load.minimumOhm), behind(load.meterOhm ?? load.minimumOhm))
}
const leadLossDb = (facts: LoadFacts) => -leadOf(facts).lossDb

/** A lead that loses no more than that; the rule only applies where the request gives its resistance. */
const shorterLead = ({ load, leadOhm }: LoadFacts): Remedy => {
  const most = downToThree((load.minimumOhm - leadOhm) * (10 ** (LEAD_LOSS_DB / 20) - 1))
  // A long lead may be all that keeps a load above what the amplifier stands.
  const stillDrivable = load.minimumOhm - leadOhm + most >= (load.allowedMinimumOhm ?? 0)
  return remedy(
    `Use a thicker or shorter lead, ${ohm(most)} out and back at the most.`,
    stillDrivable ? putWithin('/leadOhm', most, [0, 100]) : null,
  )
}

/** A lowest point at the edge of the curve is no particular frequency. */
const whereLowest = ({ load, loadCurve }: LoadFacts) =>
  load.minimumAtHz === loadCurve.frequencyHz[0] ? 'from the lowest bass on' : `at ${hertz(load.minimumAtHz)}`

const drivable = ({ alternatives }: LoadFacts) => alternatives.filter(({ mayDrive }) => mayDrive === true)
const louder = (facts: LoadFacts) =>
  drivable(facts).filter(({ levelDb }) => (levelDb ?? 0) >= PLAIN_DIFFERENCE_DB)
/** The alternatives come loudest first. */
const loudest = (facts: LoadFacts) => louder(facts)[0]

export const loadRules: readonly Rule<LoadFacts>[] = [
  {
    code: 'load-below-amplifier-minimum',
    severity: 'blocker',
    at: ({ at }) => at,
    unit: 'ohm',
    when: ({ load }) => load.mayDrive === false,
    value: ({ load }) => load.minimumOhm,
    limit: allowedOhm,
    message: (facts) => {
      const [seen, least] = saidApart(facts.load.minimumOhm, allowedOhm(facts), 'ohm')
      return `The amplifier would see ${seen} ${whereLowest(facts)}; it stands ${least} at the least, 80 % of its rated minimum.`
    },
    remedies: (facts) => [
      ...drivable(facts).map(({ wiring, text, ratedOhm, powerW }) =>
        remedy(`Wire ${text}: ${ohm(ratedOhm)}${powerW === null ? '' : `, ${watt(powerW)} clean`}.`, [
          put('/wiring', wiring),
        ]),
      ),
      'Use drivers of a higher rated impedance, or fewer of them on a channel.',
      'Use an amplifier board that is made for a lower load.',
    ],
    caution:
      'Never try a load below the minimum of the board, not even quietly: it overheats or its protection cuts in and out. First power goes through a current limit, a bench supply at 100 mA or 47 ohm in series.',
  },
  {
    code: 'load-shorts-amplifier',
    severity: 'blocker',
    at: ({ at }) => at,
    unit: 'ohm',
    when: ({ load }) => load.minimumOhm < SHORT_OHM,
    value: ({ load }) => load.minimumOhm,
    limit: () => SHORT_OHM,
    message: (facts) =>
      `This wiring is as good as a short circuit: ${ohm(facts.load.minimumOhm)} ${whereLowest(facts)}.`,
    remedies: () => ['Take out the part that bridges the terminals, or put the drivers in series with it.'],
  },
  {
    // A big coil holds the impedance up on the whole grid and is a short circuit all the same below it.
    code: 'load-shorts-direct-current',
    severity: 'blocker',
    at: ({ at }) => at,
    unit: 'ohm',
    when: ({ load }) => load.minimumOhm >= SHORT_OHM && load.meterOhm !== null && load.meterOhm < SHORT_OHM,
    value: ({ load }) => load.meterOhm ?? 0,
    limit: () => SHORT_OHM,
    message: ({ load }) =>
      `A coil bridges the terminals: for direct current this wiring is ${ohm(load.meterOhm ?? 0)}, a short circuit that the thump at switching on and the offset of the amplifier drive all they can through.`,
    remedies: () => [
      'Put a capacitor in series with the coil and what it bridges, as in a second-order high-pass.',
      'Check whether the coil belongs in series with the driver.',
    ],
  },
  {
    code: 'load-open',
    severity: 'blocker',
    at: ({ at }) => at,
    unit: 'ohm',
    when: ({ load }) => load.minimumOhm > OPEN_OHM,
    value: ({ load }) => load.minimumOhm,
    limit: () => OPEN_OHM,
    message: (facts) =>
      `This wiring is as good as open: at its lowest it is ${ohm(facts.load.minimumOhm)}, so hardly any power reaches a driver.`,
    remedies: () => [
      'Check the values of resistors and capacitors in series.',
      'Wire the drivers in parallel.',
    ],
  },
  {
    code: 'tweeter-without-capacitor',
    severity: 'warning',
    at: ({ at }) => at,
    when: ({ tweetersWithBass }) => tweetersWithBass.length > 0,
    message: ({ tweetersWithBass }) =>
      `The bass reaches ${tweetersWithBass.join(', ')}, which has its own closed back; direct current and bass destroy a tweeter.`,
    remedies: () => [
      'Put at least a capacitor in series with the tweeter; its corner an octave above its resonance.',
      'If it is a full-range driver in its own chamber, leave sharesBox out and describe that chamber by itself.',
    ],
  },
  {
    code: 'drivers-share-unequally',
    severity: 'note',
    at: ({ at }) => at,
    unit: 'dB',
    when: (facts) => quietest(facts) < -PLAIN_DIFFERENCE_DB,
    value: quietest,
    limit: () => -PLAIN_DIFFERENCE_DB,
    message: (facts) =>
      `One driver plays ${decibel(-quietest(facts))} below the loudest: in parallel the lower impedance takes more power, in series the higher.`,
    remedies: () => [
      'Pair drivers of the same impedance on a channel.',
      'Swap series and parallel: the share turns around.',
    ],
  },
  {
    code: 'speaker-lead-loss',
    severity: 'note',
    at: '/leadOhm',
    unit: 'dB',
    when: (facts) => leadLossDb(facts) > LEAD_LOSS_DB,
    value: leadLossDb,
    limit: () => LEAD_LOSS_DB,
    message: (facts) =>
      `The lead to the drivers takes ${decibel(leadLossDb(facts))} and loosens the bass: the electrical Q is ${significant(leadOf(facts).qesFactor, 3)} times that of the drivers alone.`,
    remedies: (facts) => [shorterLead(facts), 'Wire for a higher impedance.'],
  },
  {
    code: 'louder-wiring-possible',
    severity: 'note',
    at: ({ at }) => at,
    unit: 'dB',
    when: (facts) => facts.load.mayDrive === true && louder(facts).length > 0,
    value: (facts) => loudest(facts)?.levelDb ?? 0,
    message: (facts) =>
      `The amplifier may also drive ${loudest(facts)?.text}, which is ${decibel(loudest(facts)?.levelDb ?? 0)} louder.`,
    remedies: (facts) =>
      louder(facts).map(({ wiring, text, ratedOhm }) =>
        remedy(`Wire ${text}: ${ohm(ratedOhm)}.`, [put('/wiring', wiring)]),
      ),
  },
  {
    code: 'meter-reads-open',
    severity: 'note',
    at: ({ at }) => at,
    when: ({ load }) => load.meterOhm === null,
    message: () =>
      'A capacitor stands in every path, so a meter reads open across the terminals although nothing is wrong.',
    remedies: () => ['Measure each driver behind its capacitor, before it is connected.'],
  },
]

/** The bound that the resistance of a driver is beyond, ohm. */
const contradictedOhm = ({ ratedImpedanceOhm, reOhm }: DriverPrint): number => {
  const { leastOhm, mostOhm } = believableResistanceOhm(ratedImpedanceOhm)
  return reOhm < leastOhm ? leastOhm : mostOhm
}

/** Applied to each kind of driver of which both print and resistance are given. */
export const driverInLoadRules: readonly Rule<DriverPrint>[] = [
  {
    code: 'rated-impedance-contradicts-resistance',
    severity: 'warning',
    at: ({ at }) => at,
    unit: 'ohm',
    when: ({ ratedImpedanceOhm, reOhm }) => !isBelievable(ratedImpedanceOhm, reOhm),
    value: ({ reOhm }) => reOhm,
    limit: contradictedOhm,
    message: (print) => {
      const { leastOhm, mostOhm } = believableResistanceOhm(print.ratedImpedanceOhm)
      return `A driver rated ${ohm(print.ratedImpedanceOhm)} reads ${ohm(leastOhm)} to ${ohm(mostOhm)} on a meter; "${print.id}" reads ${ohm(print.reOhm)} by its data. The resistance is believed and the print is not used.`
    },
    remedies: ({ at }) => [
      'Measure the resistance again, leads off, and subtract what the probes read when they touch.',
      remedy(
        'If it reads the same, correct ratedImpedanceOhm or leave it out; the load is then rated by its lowest impedance.',
        [takeOut(at)],
      ),
    ],
  },
]
