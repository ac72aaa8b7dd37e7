import { significant } from '../say.ts'
import type { BoxFacts } from './box-facts.ts'
import { type Remedy, remedy, takeOut } from './remedy.ts'
import type { Rule } from './rule.ts'

// Rounding explains 3%, a careless measurement 25%; beyond that a figure is simply wrong. Common practice, no source.
const NONSENSE_PCT = 25

const contradictionPct = (facts: BoxFacts): number => 100 * (facts.contradiction?.share ?? 0)
const contradictionText = ({ contradiction }: BoxFacts): string =>
  `The driver data contradict each other: ${contradiction?.field} is given as ${significant(contradiction?.given ?? 0, 3)}, the other figures ask for ${significant(contradiction?.implied ?? 0, 3)}.`
const contradictionRemedies = ({ driverAt, contradiction }: BoxFacts): Remedy[] => [
  'Check units and decimal point of every figure.',
  remedy(
    `Leave out ${contradiction?.field ?? ''}, or another figure that you trust less; the others complete it.`,
    [takeOut(`${driverAt}/${contradiction?.field ?? ''}`)],
  ),
  'Measure the driver again.',
]

/** Rules about what is known of the driver. */
export const driverDataRules: readonly Rule<BoxFacts>[] = [
  {
    code: 'driver-data-impossible',
    severity: 'blocker',
    at: (facts) => `${facts.driverAt}/${facts.contradiction?.field ?? ''}`,
    unit: 'percent',
    when: (facts) => contradictionPct(facts) > NONSENSE_PCT,
    value: contradictionPct,
    limit: () => NONSENSE_PCT,
    message: (facts) =>
      `${contradictionText(facts)} No driver is like that, so nothing calculated from it can be trusted.`,
    remedies: contradictionRemedies,
  },
  {
    code: 'driver-data-contradict',
    severity: 'warning',
    at: (facts) => `${facts.driverAt}/${facts.contradiction?.field ?? ''}`,
    unit: 'percent',
    when: (facts) => contradictionPct(facts) > 0 && contradictionPct(facts) <= NONSENSE_PCT,
    value: contradictionPct,
    limit: () => 3,
    message: contradictionText,
    remedies: contradictionRemedies,
  },
  {
    code: 'travel-not-judged',
    severity: 'note',
    at: (facts) => `${facts.driverAt}/xmaxMm`,
    when: (facts) => facts.xmaxMm === null,
    message: () => 'How far the cone may move is not given, so nothing here says whether it stays clean.',
    remedies: () => [
      'Give its clean travel one way (xmax): half of what the coil is longer than the gap, or a careful push of the cone by hand, halved.',
    ],
  },
]
