import { ATTACH_LARGEST_UF, neededRatingV } from '../power/reservoir.ts'
import { ampere, hertz, ohm, say, significant, volt } from '../say.ts'
import { saidApart } from '../say-apart.ts'
import type { PowerFacts } from './power-facts.ts'
import { put, putWithin, type Remedy, remedy } from './remedy.ts'
import { downToThree, upToThree } from './rounded.ts'
import type { Rule } from './rule.ts'

/** Floating point must not push a value over its limit. */
const DUST = 1e-9
/** Capacitors from here on are fitted for the bass. Common practice, no source. */
const MEANT_FOR_BASS_UF = 470
/** A gain that nobody hears, V. */
const WORTHLESS_GAIN_V = 0.05

const PORTS_WITH_ATTACH_RULE = ['usb2', 'usb2-unconfigured', 'usb3', 'usb3-unconfigured', 'type-c-default']

/** Computers and their ports hold to the attach rule; a charger or bank usually takes it, or trips once. */
const hasAttachRule = ({ source }: PowerFacts) =>
  source.kind === 'computer-port' ||
  (source.port !== undefined && PORTS_WITH_ATTACH_RULE.includes(source.port))

const timesOver = ({ sections }: PowerFacts) => sections.reservoir?.timesOverAttachLimit ?? 0
const attachPeakA = ({ sections }: PowerFacts) => sections.reservoir?.attachPeakA ?? 0
const ratingV = ({ supply }: PowerFacts) => supply.reservoirRatingV ?? Number.POSITIVE_INFINITY
/** The voltage itself, short of the dust of floating point. */
const lowestRatingV = ({ source }: PowerFacts) => source.highestVoltageV * (1 - DUST)
const bassGainV = ({ sections }: PowerFacts) =>
  (sections.reservoir?.lowestBurstV ?? 0) - (sections.reservoir?.lowestBurstWithoutV ?? 0)

const limited = (limiterOhm: number) => putWithin('/supply/inrushLimiterOhm', limiterOhm, [0, 10_000])

/** As much as may be plugged in, uF: above 5 V less than the capacitor that the standard names for 5 V. */
const mostAtPlugUf = (facts: PowerFacts): number =>
  Math.min(ATTACH_LARGEST_UF, downToThree(facts.reservoirUf / timesOver(facts)))

const smallEnough = (facts: PowerFacts): Remedy =>
  remedy(
    `Use ${say(mostAtPlugUf(facts), 'uF')} or less at the port; a bigger one does little for the bass.`,
    [put('/supply/reservoirUf', mostAtPlugUf(facts))],
  )

const attachRemedies = (facts: PowerFacts): Remedy[] => [
  smallEnough(facts),
  'Put the capacitor before the switch where the source allows it.',
  remedy(
    `Charge it through ${ohm(facts.sections.reservoir?.lawfulLimiterOhm ?? 0)} and bypass that afterwards with a relay or transistor; a few ohms do not do.`,
    limited(facts.sections.reservoir?.lawfulLimiterOhm ?? 0),
  ),
  `Use a load switch with soft start at 100 mA: ${say(facts.sections.reservoir?.softStartMs ?? 0, 'ms')}, amplifier muted meanwhile.`,
]

const marked = ({ sections }: PowerFacts): Remedy => {
  const leastV = sections.reservoir?.leastRatingV ?? 0
  return remedy(
    `Use one marked ${volt(leastV)} or more.`,
    putWithin('/supply/reservoirRatingV', leastV, [1, 1000]),
  )
}

/** Limits the inrush to what the contacts of the switch are rated for. */
function inrushLimited(facts: PowerFacts): Remedy {
  const ratedA = facts.supply.switchRatedA ?? 0
  const limiterOhm = upToThree(facts.source.highestVoltageV / ratedA)
  return remedy(
    `Limit the inrush with an NTC or a bypassed resistor, ${ohm(limiterOhm)} or more when cold.`,
    limited(limiterOhm),
  )
}

/** Still enough for the switching edges and short of what is meant for the bass, uF. Common practice, no source. */
const SMALL_UF = 100

export const reservoirRules: readonly Rule<PowerFacts>[] = [
  {
    code: 'reservoir-overvolted',
    severity: 'blocker',
    at: '/supply/reservoirRatingV',
    unit: 'V',
    when: (facts) => facts.reservoirUf > 0 && ratingV(facts) < lowestRatingV(facts),
    value: ratingV,
    limit: ({ source }) => source.highestVoltageV,
    message: (facts) => {
      const [marked, stands] = saidApart(ratingV(facts), facts.source.highestVoltageV, 'V')
      return `The reservoir is marked ${marked} and would stand on ${stands}.`
    },
    remedies: (facts) => [marked(facts)],
    caution:
      'An electrolytic capacitor above its voltage or with reversed polarity vents hot: eye protection, and check the stripe before the first power.',
  },
  {
    code: 'reservoir-rating-too-close',
    severity: 'warning',
    at: '/supply/reservoirRatingV',
    unit: 'V',
    when: (facts) =>
      facts.reservoirUf > 0 &&
      ratingV(facts) >= lowestRatingV(facts) &&
      ratingV(facts) < neededRatingV(facts.source) * (1 - DUST),
    value: ratingV,
    limit: ({ source }) => neededRatingV(source),
    message: (facts) =>
      `The reservoir is marked ${volt(ratingV(facts))}; on ${volt(facts.source.highestVoltageV)} ${volt(neededRatingV(facts.source))} or more is wanted, so that neither tolerance nor heat brings it to its limit.`,
    remedies: (facts) => [marked(facts)],
  },
  {
    code: 'reservoir-over-attach-limit',
    severity: 'warning',
    at: '/supply/reservoirUf',
    when: (facts) => hasAttachRule(facts) && timesOver(facts) > 1,
    value: timesOver,
    limit: () => 1,
    message: (facts) =>
      `Plugged in empty, ${say(facts.reservoirUf, 'uF')} take ${ampere(attachPeakA(facts))} and ${significant(timesOver(facts), 2)} times the charge a port must stand: other devices on it may drop out.`,
    remedies: attachRemedies,
  },
  {
    code: 'reservoir-may-trip-source',
    severity: 'note',
    at: '/supply/reservoirUf',
    unit: 'A',
    when: (facts) =>
      !hasAttachRule(facts) &&
      (facts.source.kind === 'charger' || facts.source.kind === 'power-bank') &&
      timesOver(facts) > 1,
    value: attachPeakA,
    message: (facts) =>
      `Plugging in draws ${ampere(attachPeakA(facts))} for a moment; a charger or power bank usually takes it, or trips once.`,
    remedies: attachRemedies,
  },
  {
    code: 'inrush-welds-switch',
    severity: 'warning',
    at: '/supply/switchRatedA',
    unit: 'A',
    when: (facts) => attachPeakA(facts) > (facts.supply.switchRatedA ?? Number.POSITIVE_INFINITY),
    value: attachPeakA,
    limit: ({ supply }) => supply.switchRatedA ?? 0,
    message: (facts) =>
      `Switching on sends ${ampere(attachPeakA(facts))} through contacts rated for ${ampere(facts.supply.switchRatedA ?? 0)}: they weld.`,
    remedies: (facts) => [
      'Put the reservoir before the switch.',
      inrushLimited(facts),
      'Use a smaller reservoir.',
    ],
  },
  {
    code: 'reservoir-idle-in-the-bass',
    severity: 'note',
    at: '/supply/reservoirUf',
    unit: 'V',
    when: (facts) =>
      facts.reservoirUf >= MEANT_FOR_BASS_UF &&
      facts.sections.reservoir !== null &&
      facts.sections.reservoir.lowestBurstWithoutV !== null &&
      bassGainV(facts) < WORTHLESS_GAIN_V,
    value: bassGainV,
    limit: () => WORTHLESS_GAIN_V,
    message: (facts) =>
      `At 50 Hz the reservoir lifts the lowest voltage by only ${say(1000 * Math.max(0, bassGainV(facts)), 'mV')}${helpsText(facts)}`,
    remedies: () => [
      'Spend the money on a shorter, thicker lead instead.',
      remedy(
        `Keep a small one, ${SMALL_UF} uF, with a 0.1 to 1 uF ceramic beside it for the switching edges.`,
        [put('/supply/reservoirUf', SMALL_UF)],
      ),
    ],
  },
]

function helpsText({ sections }: PowerFacts): string {
  const helpsAboveHz = sections.reservoir?.helpsAboveHz
  return typeof helpsAboveHz === 'number' ? `; it helps from ${hertz(helpsAboveHz)} up.` : '.'
}
