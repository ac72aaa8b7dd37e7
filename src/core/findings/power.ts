import { mayDrive } from '../load/rated-impedance.ts'
import { leastRatingOnV } from '../power/reservoir.ts'
import { hertz, ohm, say, volt, watt } from '../say.ts'
import { saidApart } from '../say-apart.ts'
import type { DriverHeat, PowerFacts } from './power-facts.ts'
import { putWithin, remedy } from './remedy.ts'
import { downToThree } from './rounded.ts'
import type { Rule } from './rule.ts'

const outputDcV = ({ sections }: PowerFacts) => sections.power.outputDcV ?? 0
const outputCapacitorUf = ({ sections }: PowerFacts) => sections.power.outputCapacitorUf ?? 0

export const powerRules: readonly Rule<PowerFacts>[] = [
  {
    code: 'given-load-below-amplifier-minimum',
    severity: 'blocker',
    at: ({ loadAt }) => loadAt,
    unit: 'ohm',
    when: ({ isLoadJudged, minimumOhm, amplifier }) =>
      !isLoadJudged && !mayDrive(minimumOhm, amplifier.minimumLoadOhm),
    value: ({ minimumOhm }) => minimumOhm,
    limit: ({ allowedMinimumOhm }) => allowedMinimumOhm,
    message: ({ loadAt, loadOhm, minimumOhm, allowedMinimumOhm }) => {
      const [lowest, allowed] = saidApart(minimumOhm, allowedMinimumOhm, 'ohm')
      const load =
        loadAt === '/minimumOhm'
          ? `The load dips to ${lowest}`
          : `A load rated ${ohm(loadOhm)} may dip to ${lowest}`
      return `${load}; the amplifier stands ${allowed} at the least.`
    },
    remedies: () => ['Wire the drivers in series.', 'Use a board that is made for a lower load.'],
  },
  {
    code: 'output-capacitor-needed',
    severity: 'warning',
    at: '/amplifier/output',
    unit: 'V',
    when: ({ sections, blocksDirectCurrent, amplifier }) =>
      sections.power.outputDcV !== null && !blocksDirectCurrent && amplifier.outputCapacitorFitted !== true,
    value: outputDcV,
    limit: () => 0,
    message: (facts) =>
      `A single-ended output on one supply of ${volt(facts.source.voltageV)} rests at ${volt(outputDcV(facts))}: without a capacitor that direct voltage stands on the drivers all the time.`,
    remedies: (facts) => [
      `Put a capacitor of ${say(outputCapacitorUf(facts), 'uF')} or more, marked ${volt(leastRatingOnV(facts.source))} or more, between each output and its drivers, plus towards the amplifier: 3 dB down at ${hertz(facts.lowestNoteHz)} into ${ohm(facts.loadOhm)}.`,
      'Look whether the board carries one at each output already (then give outputCapacitorFitted), and measure the direct voltage at the speaker leads before connecting a driver: it must go to zero.',
      'Use a board with a bridge output.',
    ],
    caution:
      'A single-ended output rests at half the supply: connected without its capacitor, a driver burns and may set fire to what touches it. Measure the direct voltage at the speaker leads, a resistor of 1 kohm across them, before connecting a driver.',
  },
  {
    code: 'claimed-power-impossible',
    severity: 'note',
    at: '/amplifier/ratedPowerW',
    unit: 'W',
    when: ({ sections }) => sections.power.claimedPossible === false,
    value: ({ sections }) => sections.power.claimedPowerW ?? 0,
    limit: ({ sections }) => sections.power.largestClaimW,
    message: ({ sections, loadOhm, source }) => {
      const [claimed, most] = saidApart(sections.power.claimedPowerW ?? 0, sections.power.largestClaimW, 'W')
      return `${claimed} a channel is impossible on ${volt(source.voltageV)}, where ${most} is the most that can be claimed: into ${ohm(loadOhm)} ${watt(sections.power.cleanPowerW)} is clean and ${watt(sections.power.powerAt10PercentW)} badly clipped.`
    },
    remedies: ({ sections }) => [
      remedy(
        `Reckon with ${watt(sections.power.cleanPowerW)} a channel.`,
        putWithin('/amplifier/ratedPowerW', downToThree(sections.power.cleanPowerW), [0.01, 5000]),
      ),
    ],
  },
]

const atFullVolume = ({ isFullPack }: DriverHeat) =>
  isFullPack ? 'at full volume from a full pack' : 'at full volume'
const nameOf = ({ id }: DriverHeat) => (id === null ? 'a driver' : `"${id}"`)

/** Applied to each kind of driver of which the rated power is known. */
export const driverPowerRules: readonly Rule<DriverHeat>[] = [
  {
    code: 'driver-overpowered-by-programme',
    severity: 'warning',
    at: ({ at }) => at,
    unit: 'W',
    when: ({ programmeW, ratedPowerW }) => programmeW > ratedPowerW,
    value: ({ programmeW }) => programmeW,
    limit: ({ ratedPowerW }) => ratedPowerW,
    message: (heat) =>
      `Played ${atFullVolume(heat)}, ${nameOf(heat)} gets ${watt(heat.programmeW)} on average and is rated for ${watt(heat.ratedPowerW)}.`,
    remedies: () => ['Use a lower supply voltage.', 'Use more drivers, or stronger ones.'],
  },
  {
    code: 'driver-overpowered-by-sine',
    severity: 'note',
    at: ({ at }) => at,
    unit: 'W',
    when: ({ sineW, programmeW, ratedPowerW }) => sineW > ratedPowerW && programmeW <= ratedPowerW,
    value: ({ sineW }) => sineW,
    limit: ({ ratedPowerW }) => ratedPowerW,
    message: (heat) =>
      `A test tone ${atFullVolume(heat)} puts ${watt(heat.sineW)} in ${nameOf(heat)}, which is rated for ${watt(heat.ratedPowerW)}; the programme does not.`,
    remedies: () => ['Keep test tones short and well below full volume.'],
  },
]
