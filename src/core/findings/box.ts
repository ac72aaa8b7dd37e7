import { decibel, hertz, mm, say, significant, volt } from '../say.ts'
import { mmApart, saidApart } from '../say-apart.ts'
import type { BoxFacts } from './box-facts.ts'
import {
  deeper,
  filled,
  higherLowestNote,
  highPass,
  lessBoom,
  quieter,
  smallerBox,
  tunedNearDriver,
  turnedDown,
  widerPort,
} from './box-remedies.ts'
import { remedy } from './remedy.ts'
import type { Rule } from './rule.ts'

const xmax = (facts: BoxFacts): number => facts.xmaxMm ?? Number.POSITIVE_INFINITY
/** Travel of a cone or radiator beside that to which it is clean. */
function travels(travelMm: number, cleanMm: number): { moves: string; clean: string } {
  const [moves, clean] = mmApart(travelMm, cleanMm)
  return { moves: `would move ${moves}`, clean: `it is clean up to ${clean}` }
}
const metres = (value: number): string => say(value, 'm/s', 2)
export const boxRules: readonly Rule<BoxFacts>[] = [
  {
    code: 'cone-leaves-range-in-band',
    severity: 'warning',
    at: (facts) => `${facts.driverAt}/xmaxMm`,
    unit: 'mm',
    when: (facts) => facts.excursionMm > xmax(facts),
    value: (facts) => facts.excursionMm,
    limit: xmax,
    message: (facts) => {
      const { moves, clean } = travels(facts.excursionMm, xmax(facts))
      return `At full drive, ${volt(facts.driveVoltageV)}, the cone ${moves} at ${hertz(facts.excursionAtHz)}; ${clean}.`
    },
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
    message: (facts) => {
      const { moves, clean } = travels(facts.unloadedMm, xmax(facts))
      return `Below its tuning, ${hertz(facts.tuningHz ?? 0)}, the box no longer holds the cone: at full drive it ${moves}; ${clean}.`
    },
    remedies: (facts) => [
      ...highPass(facts),
      ...quieter(facts),
      remedy('Build it closed instead: a closed box holds the cone at every frequency.', facts.closing),
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
    message: (facts) => {
      const [moves, clean] = mmApart(facts.heldBelowBandMm, xmax(facts))
      return `Notes below ${hertz(facts.bandFromHz)} at full drive would move the cone ${moves}; it is clean up to ${clean}.`
    },
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
    remedies: (facts) => widerPort(facts, 34),
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
    remedies: (facts) => widerPort(facts, 17),
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
    message: (facts) => {
      const { moves, clean } = travels(facts.radiatorMm, facts.radiatorXmaxMm ?? 0)
      return `At full drive the passive radiator ${moves}; ${clean}.`
    },
    remedies: (facts) => [
      'Use a larger radiator, or two.',
      turnedDown(facts, (facts.radiatorXmaxMm ?? 0) / facts.radiatorMm),
    ],
  },
  {
    code: 'radiator-travel-not-judged',
    severity: 'note',
    at: '/passiveRadiator/xmaxMm',
    when: (facts) => facts.kind === 'passive-radiator' && facts.radiatorXmaxMm === null,
    message: (facts) =>
      `How far the passive radiator may move is not given; at full drive it would move ${mm(facts.radiatorMm)}.`,
    remedies: () => ['Give the clean travel of the radiator, one way (xmax).'],
  },
  {
    code: 'drive-above-rating',
    severity: 'warning',
    at: (facts) => `${facts.driverAt}/ratedPowerW`,
    unit: 'W',
    when: ({ drivePower }) => drivePower !== null && drivePower.powerW > drivePower.ratedW,
    value: ({ drivePower }) => drivePower?.powerW ?? 0,
    limit: ({ drivePower }) => drivePower?.ratedW ?? 0,
    message: ({ drivePower }) => {
      const [power, rated] = saidApart(drivePower?.powerW ?? 0, drivePower?.ratedW ?? 0, 'W')
      return `A steady sine at this voltage puts ${power} in a driver rated for ${rated}.`
    },
    remedies: (facts) => [
      turnedDown(
        facts,
        Math.sqrt((facts.drivePower?.ratedW ?? 0) / (facts.drivePower?.powerW ?? Number.POSITIVE_INFINITY)),
      ),
      'Share the power among more drivers.',
    ],
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
    remedies: (facts) => [lessBoom(facts), ...filled(facts), 'Set the box away from walls and corners.'],
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
    remedies: (facts) => [remedy('Try the same box closed and compare.', facts.closing)],
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
    remedies: (facts) => [tunedNearDriver(facts)],
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
    remedies: (facts) => [higherLowestNote(facts), deeper(facts), 'Use a driver of lower resonance.'],
  },
]
