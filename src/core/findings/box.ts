import type { Box } from '../../schema/box.ts'
import { decibel, hertz, mm, say, significant, volt, watt } from '../say.ts'
import type { Rule } from './rule.ts'

export interface BoxFacts {
  kind: Box['kind']
  /** Pointer to the parameters of the driver in the request. */
  driverAt: string
  driveVoltageV: number
  qts: number
  h: number | null
  peakDb: number
  peakHz: number | null
  xmaxMm: number | null
  bandFromHz: number
  excursionMm: number
  excursionAtHz: number
  /** Tuning of an open box; null for a closed one. */
  tuningHz: number | null
  /** Highest excursion below that tuning, and below the band where the box still holds the cone. */
  unloadedMm: number
  heldBelowBandMm: number
  protectiveHighPassHz: number | null
  safeVoltageV: number | null
  airSpeedMPerS: number
  airSpeedAtHz: number
  radiatorMm: number
  radiatorXmaxMm: number | null
  /** The lowest note wanted and the level there against the level above the bass; null when none is wanted. */
  lowest: { hz: number; levelDb: number } | null
  /** A total Q wanted of a closed box; null when none was named. */
  wanted: { qtc: number; reachable: boolean } | null
  /** Power of a full sine in one driver and its rating; null where that is unknown or judged elsewhere. */
  drivePower: { powerW: number; ratedW: number } | null
  /** The worst contradiction among the given driver data; null when they agree. */
  contradiction: { field: string; given: number; implied: number; share: number } | null
}

const xmax = (facts: BoxFacts): number => facts.xmaxMm ?? Number.POSITIVE_INFINITY
const metres = (value: number): string => say(value, 'm/s', 2)
const quieter = (facts: BoxFacts): string[] =>
  facts.safeVoltageV === null
    ? []
    : [
        `Keep the level down: with notes below ${hertz(facts.bandFromHz)} in the music, ${volt(facts.safeVoltageV)} on the channel is the most, ${decibel(20 * Math.log10(facts.driveVoltageV / facts.safeVoltageV))} below full.`,
      ]
const highPass = (facts: BoxFacts): string[] =>
  // A corner inside the band takes the music away with the danger.
  facts.protectiveHighPassHz === null || facts.protectiveHighPassHz > facts.bandFromHz
    ? []
    : [`Put a second-order high-pass at ${hertz(facts.protectiveHighPassHz)} before the amplifier.`]
const widerPort = [
  'Use a wider port; it gets longer with its area.',
  'Round both ends of the port.',
  'Turn the level down.',
]

const smallerBox = (facts: BoxFacts): string =>
  facts.kind === 'closed'
    ? 'Use a smaller box: it holds the cone better, at the cost of the deepest notes.'
    : 'Use a smaller box, or tune it nearer to the note where the cone moves most.'

/** What brings a missing lowest note back: an open box plays best just above its tuning. */
function deeper({ kind, tuningHz, lowest }: BoxFacts): string {
  if (kind === 'closed') return 'Use a larger box.'
  return (tuningHz ?? 0) < 0.85 * (lowest?.hz ?? 0)
    ? 'Tune the box higher: it plays loudest just above its tuning, and this tuning lies far below the note.'
    : 'Use a larger box, or a lower tuning.'
}

export const boxRules: readonly Rule<BoxFacts>[] = [
  {
    code: 'cone-leaves-range-in-band',
    severity: 'warning',
    at: (facts) => `${facts.driverAt}/xmaxMm`,
    unit: 'mm',
    when: (facts) => facts.excursionMm > xmax(facts),
    value: (facts) => facts.excursionMm,
    limit: xmax,
    message: (facts) =>
      `At full drive, ${volt(facts.driveVoltageV)}, the cone would move ${mm(facts.excursionMm)} at ${hertz(facts.excursionAtHz)}; it is clean up to ${mm(xmax(facts))}.`,
    remedies: (facts) => [...quieter(facts), smallerBox(facts), ...highPass(facts)],
  },
  {
    code: 'cone-unloaded-below-tuning',
    severity: 'warning',
    at: (facts) => `${facts.driverAt}/xmaxMm`,
    unit: 'mm',
    when: (facts) => facts.unloadedMm > xmax(facts),
    value: (facts) => facts.unloadedMm,
    limit: xmax,
    message: (facts) =>
      `Below its tuning, ${hertz(facts.tuningHz ?? 0)}, the box no longer holds the cone: at full drive it would move ${mm(facts.unloadedMm)}; it is clean up to ${mm(xmax(facts))}.`,
    remedies: (facts) => [
      ...highPass(facts),
      ...quieter(facts),
      'Build it closed instead: a closed box holds the cone at every frequency.',
    ],
  },
  {
    code: 'cone-leaves-range-below-band',
    severity: 'note',
    at: (facts) => `${facts.driverAt}/xmaxMm`,
    unit: 'mm',
    when: (facts) => facts.heldBelowBandMm > xmax(facts),
    value: (facts) => facts.heldBelowBandMm,
    limit: xmax,
    message: (facts) =>
      `Notes below ${hertz(facts.bandFromHz)} at full drive would move the cone ${mm(facts.heldBelowBandMm)}; it is clean up to ${mm(xmax(facts))}.`,
    remedies: (facts) => [...highPass(facts), ...quieter(facts), smallerBox(facts)],
  },
  {
    code: 'port-air-speed-extreme',
    severity: 'warning',
    at: '/port',
    unit: 'm/s',
    when: (facts) => facts.airSpeedMPerS > 34,
    value: (facts) => facts.airSpeedMPerS,
    limit: () => 34,
    message: (facts) =>
      `At full drive the air in the port would reach ${metres(facts.airSpeedMPerS)} at ${hertz(facts.airSpeedAtHz)}: it stops working as a port and roars.`,
    remedies: () => widerPort,
  },
  {
    code: 'port-air-speed-high',
    severity: 'warning',
    at: '/port',
    unit: 'm/s',
    when: (facts) => facts.airSpeedMPerS > 17 && facts.airSpeedMPerS <= 34,
    value: (facts) => facts.airSpeedMPerS,
    limit: () => 17,
    message: (facts) =>
      `At full drive the air in the port reaches ${metres(facts.airSpeedMPerS)} at ${hertz(facts.airSpeedAtHz)}: the port is plainly audible.`,
    remedies: () => widerPort,
  },
  {
    code: 'port-air-speed-noticeable',
    severity: 'note',
    at: '/port',
    unit: 'm/s',
    when: (facts) => facts.airSpeedMPerS > 10 && facts.airSpeedMPerS <= 17,
    value: (facts) => facts.airSpeedMPerS,
    limit: () => 10,
    message: (facts) =>
      `At full drive the air in the port reaches ${metres(facts.airSpeedMPerS)} at ${hertz(facts.airSpeedAtHz)}: a square-edged port may be heard.`,
    remedies: () => ['Round both ends of the port.', 'Use a wider port.'],
  },
  {
    code: 'radiator-leaves-range',
    severity: 'warning',
    at: '/passiveRadiator',
    unit: 'mm',
    when: (facts) => facts.radiatorXmaxMm !== null && facts.radiatorMm > facts.radiatorXmaxMm,
    value: (facts) => facts.radiatorMm,
    limit: (facts) => facts.radiatorXmaxMm ?? 0,
    message: (facts) =>
      `At full drive the passive radiator would move ${mm(facts.radiatorMm)}; it is clean up to ${mm(facts.radiatorXmaxMm ?? 0)}.`,
    remedies: () => ['Use a larger radiator, or two.', 'Turn the level down.'],
  },
  {
    code: 'radiator-travel-not-judged',
    severity: 'note',
    at: '/passiveRadiator/xmaxMm',
    when: (facts) => facts.kind === 'passive-radiator' && facts.radiatorXmaxMm === null,
    message: (facts) =>
      `How far the passive radiator may move is not given; at full drive it would move ${mm(facts.radiatorMm)}.`,
    remedies: () => ['Give xmaxMm of the radiator.'],
  },
  {
    code: 'drive-above-rating',
    severity: 'warning',
    at: (facts) => `${facts.driverAt}/ratedPowerW`,
    unit: 'W',
    when: ({ drivePower }) => drivePower !== null && drivePower.powerW > drivePower.ratedW,
    value: ({ drivePower }) => drivePower?.powerW ?? 0,
    limit: ({ drivePower }) => drivePower?.ratedW ?? 0,
    message: ({ drivePower }) =>
      `A steady sine at this voltage puts ${watt(drivePower?.powerW ?? 0)} in a driver rated for ${watt(drivePower?.ratedW ?? 0)}.`,
    remedies: () => ['Drive it with less.', 'Share the power among more drivers.'],
  },
  {
    code: 'wanted-qtc-out-of-reach',
    severity: 'warning',
    at: '/wantedQtc',
    when: ({ wanted }) => wanted !== null && !wanted.reachable,
    value: ({ wanted }) => wanted?.qtc ?? 0,
    limit: (facts) => facts.qts,
    message: (facts) =>
      `No closed box gives these drivers a total Q of ${significant(facts.wanted?.qtc ?? 0, 3)}: a box only raises their own ${significant(facts.qts, 3)}, as far as its losses let it.`,
    remedies: (facts) => [
      `Ask for more than ${significant(facts.qts, 3)}${(facts.wanted?.qtc ?? 0) > facts.qts ? ', but less than this' : ''}.`,
      'Use a driver of lower Q.',
    ],
  },
  {
    code: 'bass-booms',
    severity: 'warning',
    at: '/box',
    unit: 'dB',
    when: (facts) => facts.peakDb > 3,
    value: (facts) => facts.peakDb,
    limit: () => 3,
    message: (facts) =>
      `The bass stands ${decibel(facts.peakDb)} above the rest near ${hertz(facts.peakHz ?? 0)}: it will boom.`,
    remedies: (facts) => [
      facts.kind === 'closed'
        ? 'Use a larger box; for a driver of high Q even that helps only so far.'
        : 'Close the box: this driver is too lightly damped for a port.',
      'Fill the box loosely with fibre.',
      'Set the box away from walls and corners.',
    ],
  },
  {
    code: 'vented-with-lightly-damped-driver',
    severity: 'note',
    at: (facts) => `${facts.driverAt}/qes`,
    when: (facts) => facts.kind !== 'closed' && facts.qts > 0.6,
    value: (facts) => facts.qts,
    limit: () => 0.6,
    message: (facts) =>
      `With a total Q of ${significant(facts.qts, 2)} this driver is better in a closed box; a port makes its bass ring.`,
    remedies: () => ['Try the same box closed and compare.'],
  },
  {
    code: 'tuning-far-from-driver',
    severity: 'note',
    at: (facts) => (facts.kind === 'vented' ? '/port' : '/passiveRadiator'),
    when: (facts) => facts.h !== null && (facts.h > 2 || facts.h < 0.4),
    value: (facts) => facts.h ?? 0,
    limit: (facts) => ((facts.h ?? 0) > 2 ? 2 : 0.4),
    message: (facts) =>
      `The box is tuned to ${significant(facts.h ?? 0, 2)} times the resonance of the driver, far from any classic box.`,
    remedies: () => ['Tune nearer to the resonance of the driver.'],
  },
  {
    code: 'lowest-note-missing',
    severity: 'warning',
    at: '/wants/lowestHz',
    unit: 'dB',
    when: (facts) => facts.lowest !== null && facts.lowest.levelDb < -6,
    value: (facts) => facts.lowest?.levelDb ?? 0,
    limit: () => -6,
    message: ({ lowest }) =>
      `The lowest note wanted, ${hertz(lowest?.hz ?? 0)}, comes ${decibel(-(lowest?.levelDb ?? 0))} below the rest.`,
    remedies: (facts) => ['Ask for a higher lowest note.', deeper(facts), 'Use a driver of lower resonance.'],
  },
]
