import { ohm, volt, watt } from '../say.ts'
import type { PowerFacts } from './power-facts.ts'
import type { Rule } from './rule.ts'

const ratedW = ({ driverRatedPowerW = Number.POSITIVE_INFINITY }: PowerFacts) => driverRatedPowerW

export const powerRules: readonly Rule<PowerFacts>[] = [
  {
    code: 'given-load-below-amplifier-minimum',
    severity: 'blocker',
    at: '/minimumOhm',
    unit: 'ohm',
    when: ({ isLoadJudged, minimumOhm, allowedMinimumOhm }) =>
      !isLoadJudged && minimumOhm < allowedMinimumOhm * (1 - 1e-9),
    value: ({ minimumOhm }) => minimumOhm,
    limit: ({ allowedMinimumOhm }) => allowedMinimumOhm,
    message: ({ minimumOhm, allowedMinimumOhm }) =>
      `The load dips to ${ohm(minimumOhm)}; the amplifier stands ${ohm(allowedMinimumOhm)} at the least.`,
    remedies: () => ['Wire the drivers in series.', 'Use a board that is made for a lower load.'],
  },
  {
    code: 'claimed-power-impossible',
    severity: 'note',
    at: '/amplifier/ratedPowerW',
    unit: 'W',
    when: ({ sections }) => sections.power.claimedPossible === false,
    value: ({ sections }) => sections.power.claimedPowerW ?? 0,
    limit: ({ sections }) => sections.power.powerAt10PercentW,
    message: ({ sections, loadOhm, source }) =>
      `${watt(sections.power.claimedPowerW ?? 0)} a channel is impossible on ${volt(source.voltageV)}: into ${ohm(loadOhm)} ${watt(sections.power.cleanPowerW)} is clean and ${watt(sections.power.powerAt10PercentW)} badly clipped.`,
    remedies: ({ sections }) => [`Reckon with ${watt(sections.power.cleanPowerW)} a channel.`],
  },
  {
    code: 'driver-overpowered-by-programme',
    severity: 'warning',
    at: ({ driverRatedAt }) => driverRatedAt,
    unit: 'W',
    when: (facts) => facts.driverProgrammeW > ratedW(facts),
    value: ({ driverProgrammeW }) => driverProgrammeW,
    limit: ratedW,
    message: (facts) =>
      `At full volume a driver gets ${watt(facts.driverProgrammeW)} on average and is rated for ${watt(ratedW(facts))}.`,
    remedies: () => ['Use a lower supply voltage.', 'Use more drivers, or stronger ones.'],
  },
  {
    code: 'driver-overpowered-by-sine',
    severity: 'note',
    at: ({ driverRatedAt }) => driverRatedAt,
    unit: 'W',
    when: (facts) =>
      facts.sections.power.driverPowerW > ratedW(facts) && facts.driverProgrammeW <= ratedW(facts),
    value: ({ sections }) => sections.power.driverPowerW,
    limit: ratedW,
    message: (facts) =>
      `A test tone at full volume puts ${watt(facts.sections.power.driverPowerW)} in a driver rated for ${watt(ratedW(facts))}; the programme does not.`,
    remedies: () => ['Keep test tones short and well below full volume.'],
  },
]
