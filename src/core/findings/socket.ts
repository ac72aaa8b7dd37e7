import { isDeliveryLevel, isTypeC, powerDeliveryLevelV } from '../power/source.ts'
import { ampere, volt } from '../say.ts'
import type { PowerFacts } from './power-facts.ts'
import { put, type Remedy, remedy } from './remedy.ts'
import type { Rule } from './rule.ts'
import { leadRemedies, stronger } from './supply-remedies.ts'

/** What a port must give to a device that never asks. USB 2.0, from memory. */
const UNCONFIGURED_A = 0.1

/** Dust of floating point. */
const DUST = 1e-9

const lowestLawfulV = ({ sections }: PowerFacts) => sections.supply.lowestLawfulBoardV

/** Whether more than the 5 V of the socket is counted on, which only negotiation brings. */
const countsOnLevel = ({ source }: PowerFacts) =>
  source.port === 'power-delivery' && powerDeliveryLevelV(source.voltageV) > 5

const ASKING = [put('/amplifier/asksForPower', true)]
const reckoned = (levelV: number): Remedy =>
  remedy(`Reckon with ${volt(levelV)}.`, [put('/supply/voltageV', levelV)])

/** What a USB socket gives to this board, by the standards. */
export const socketRules: readonly Rule<PowerFacts>[] = [
  {
    code: 'lawful-socket-too-low-for-board',
    severity: 'note',
    at: '/supply/port',
    unit: 'V',
    when: (facts) => (lowestLawfulV(facts) ?? Number.POSITIVE_INFINITY) < facts.boardMinimumV * (1 - DUST),
    value: (facts) => lowestLawfulV(facts) ?? 0,
    limit: ({ boardMinimumV }) => boardMinimumV,
    message: (facts) =>
      `The standard lets this socket fall to ${volt(facts.sections.supply.lowestSocketV ?? 0)}: then ${volt(lowestLawfulV(facts) ?? 0)} is left at the board, which works from ${volt(facts.boardMinimumV)} up.`,
    remedies: (facts) => [
      'Measure the voltage at the board with music playing, with the source that it will have.',
      ...leadRemedies(facts),
    ],
  },
  {
    code: 'no-data-chip-on-computer-port',
    severity: 'note',
    at: '/amplifier/asksForPower',
    unit: 'A',
    when: (facts) =>
      facts.source.kind === 'computer-port' &&
      facts.amplifier.asksForPower !== true &&
      facts.sections.supply.programmeA > UNCONFIGURED_A,
    value: (facts) => facts.sections.supply.programmeA,
    limit: () => UNCONFIGURED_A,
    message: (facts) =>
      `A board without a data chip asks for nothing and may by the standard draw ${ampere(UNCONFIGURED_A)}; this one draws ${ampere(facts.sections.supply.programmeA)}. Most ports give 0.5 A all the same and cut off somewhere above.`,
    remedies: (facts) => [
      stronger(facts, 'Use a charger in place of the computer.', facts.sections.supply.sineA),
      'Use a powered hub.',
    ],
  },
  {
    code: 'no-pull-downs-on-type-c',
    severity: 'warning',
    at: '/amplifier/asksForPower',
    when: (facts) => isTypeC(facts.source.port) && facts.amplifier.asksForPower !== true,
    message: () =>
      'A socket without pull-downs gets nothing at all from a Type-C source through a C-to-C lead.',
    remedies: () => [
      remedy('Put 5.1 kohm from each of the two CC pins of the socket to ground.', ASKING),
      'Use a lead with a Type-A plug at the source; it then gives 5 V at the default current.',
    ],
  },
  {
    code: 'delivery-level-not-asked-for',
    severity: 'warning',
    at: '/amplifier/asksForPower',
    unit: 'V',
    when: (facts) => countsOnLevel(facts) && facts.amplifier.asksForPower !== true,
    value: ({ source }) => source.voltageV,
    limit: () => 5,
    message: ({ source }) =>
      `A power-delivery source stays at 5 V until somebody asks for more; this board does not ask, and ${volt(source.voltageV)} is counted on.`,
    remedies: () => [
      remedy('Put a module that asks for this level before the board, then give asksForPower.', ASKING),
      'Use an adapter of that voltage.',
    ],
  },
  {
    code: 'no-such-delivery-level',
    severity: 'warning',
    at: '/supply/voltageV',
    unit: 'V',
    when: ({ source }) => source.port === 'power-delivery' && !isDeliveryLevel(source.voltageV),
    value: ({ source }) => source.voltageV,
    limit: ({ source }) => powerDeliveryLevelV(source.voltageV),
    message: ({ source }) =>
      `${volt(source.voltageV)} is no fixed level of power delivery: who asks for it mostly gets ${volt(powerDeliveryLevelV(source.voltageV))}.`,
    remedies: ({ source }) => [
      reckoned(powerDeliveryLevelV(source.voltageV)),
      'Use an adapter of that voltage.',
    ],
  },
]
