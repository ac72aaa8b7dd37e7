import { mustBeAsked, PORTS } from '../power/source.ts'
import { ampere, ohm, say, volt, watt } from '../say.ts'
import { saidApart } from '../say-apart.ts'
import type { PowerFacts } from './power-facts.ts'
import { put, putWithin, remedy } from './remedy.ts'
import type { Rule } from './rule.ts'
import {
  CURRENTS_A,
  fuseRemedies,
  leadRemedies,
  oneCellMore,
  otherCells,
  otherVoltage,
  stronger,
} from './supply-remedies.ts'

/** A supply this far from the voltage of the board is another supply. Common practice, no source. */
const VOLTAGE_TOLERANCE = 0.1
/** Three cells of 4.2 V are 12.6 V, whatever floating point makes of it. */
const DUST = 1e-9

const limitA = ({ source }: PowerFacts) => source.currentLimitA ?? Number.POSITIVE_INFINITY
/** What the standard of a named socket gives without being asked; sockets that are asked are capped before. */
const standardA = ({ source: { port } }: PowerFacts) =>
  port === undefined || mustBeAsked(port) ? Number.POSITIVE_INFINITY : PORTS[port].currentLimitA
const supplied = ({ sections }: PowerFacts) => sections.supply
const deliverableW = (facts: PowerFacts) => supplied(facts).largestDeliverableW ?? Number.POSITIVE_INFINITY

/** One voltage, or that of a pack with what it reaches when full. */
const voltageText = ({ voltageV, highestVoltageV }: PowerFacts['source']) =>
  highestVoltageV > voltageV ? `${volt(voltageV)}, ${volt(highestVoltageV)} when full` : volt(voltageV)

function differsFromBoard({ source, amplifier }: PowerFacts): boolean {
  const { supplyVoltageV, maximumSupplyV, minimumSupplyV } = amplifier
  if (supplyVoltageV === undefined) return false
  const isHigh = source.highestVoltageV > supplyVoltageV * (1 + VOLTAGE_TOLERANCE)
  const isLow = source.voltageV < supplyVoltageV * (1 - VOLTAGE_TOLERANCE)
  return (isHigh && maximumSupplyV === undefined) || (isLow && minimumSupplyV === undefined)
}

const boardMinimumV = ({ boardMinimumV }: PowerFacts) => boardMinimumV

function sagsAtPeak(facts: PowerFacts): boolean {
  if (facts.sineDrawW > deliverableW(facts)) return false
  const margin = supplied(facts).brownOutMarginV
  return margin === null || margin < 0
}

/** Voltage at the board in the peak of a bass note; null when the lead cannot deliver it. */
function lowestAtPeakV(facts: PowerFacts): number | null {
  const margin = supplied(facts).brownOutMarginV
  return margin === null ? null : boardMinimumV(facts) + margin
}

export const supplyRules: readonly Rule<PowerFacts>[] = [
  {
    code: 'supply-above-board-limit',
    severity: 'blocker',
    at: '/supply/voltageV',
    unit: 'V',
    when: ({ source, amplifier }) =>
      source.highestVoltageV > (amplifier.maximumSupplyV ?? Number.POSITIVE_INFINITY) * (1 + DUST),
    value: ({ source }) => source.highestVoltageV,
    limit: ({ amplifier, source }) => amplifier.maximumSupplyV ?? source.highestVoltageV,
    message: ({ source, amplifier }) => {
      const { highestVoltageV, voltageV } = source
      const [highest, most] = saidApart(highestVoltageV, amplifier.maximumSupplyV ?? highestVoltageV, 'V')
      return `The supply ${highestVoltageV > voltageV ? 'may reach' : 'has'} ${highest}; the board stands ${most}.`
    },
    remedies: (facts) => [
      facts.source.kind === 'cells'
        ? otherCells(facts, 'fewer')
        : otherVoltage(facts, facts.amplifier.maximumSupplyV ?? facts.source.voltageV),
      'Use a board that stands the voltage.',
    ],
    caution:
      'Do not connect the supply to try it: an overvoltage destroys the board at once and may vent a capacitor.',
  },
  {
    code: 'supply-below-board-minimum',
    severity: 'blocker',
    at: '/supply/voltageV',
    unit: 'V',
    when: ({ source, amplifier }) => source.voltageV < (amplifier.minimumSupplyV ?? 0) * (1 - DUST),
    value: ({ source }) => source.voltageV,
    limit: ({ amplifier }) => amplifier.minimumSupplyV ?? 0,
    message: ({ source, amplifier }) =>
      `The board needs ${volt(amplifier.minimumSupplyV ?? 0)}; the supply has ${volt(source.voltageV)}.`,
    remedies: (facts) => [
      facts.source.kind === 'cells'
        ? otherCells(facts, 'more')
        : otherVoltage(facts, facts.amplifier.minimumSupplyV ?? facts.source.voltageV),
      'Use a board made for this voltage.',
    ],
  },
  {
    code: 'pack-empties-below-board-minimum',
    severity: 'warning',
    at: '/amplifier/minimumSupplyV',
    unit: 'V',
    when: (facts) =>
      facts.source.kind === 'cells' &&
      facts.source.voltageV >= (facts.amplifier.minimumSupplyV ?? 0) &&
      supplied(facts).lowestVoltageV < (facts.amplifier.minimumSupplyV ?? 0) * (1 - DUST),
    value: (facts) => supplied(facts).lowestVoltageV,
    limit: ({ amplifier }) => amplifier.minimumSupplyV ?? 0,
    message: (facts) =>
      `The pack falls to ${volt(supplied(facts).lowestVoltageV)} before it is empty; the board stops at ${volt(facts.amplifier.minimumSupplyV ?? 0)}, so it plays shorter than the capacity says.`,
    remedies: (facts) => [oneCellMore(facts), 'Use a board that works on less.'],
  },
  {
    code: 'supply-differs-from-board',
    severity: 'warning',
    at: '/supply/voltageV',
    unit: 'V',
    when: differsFromBoard,
    value: ({ source }) => source.voltageV,
    limit: ({ amplifier, source }) => amplifier.supplyVoltageV ?? source.voltageV,
    message: ({ source, amplifier }) =>
      `The supply has ${voltageText(source)}; the board is meant for ${volt(amplifier.supplyVoltageV ?? source.voltageV)}.`,
    remedies: (facts) => [
      'Read the lowest and highest supply voltage printed on the board and give both.',
      facts.source.kind === 'cells'
        ? 'Use a supply of the voltage of the board.'
        : otherVoltage(facts, facts.source.voltageV),
    ],
    caution:
      'Never try a supply above the voltage printed on a board: an overvoltage destroys it at once and may vent a capacitor.',
  },
  {
    code: 'supply-lead-cannot-deliver',
    severity: 'blocker',
    at: '/supply/cable',
    unit: 'W',
    when: (facts) => facts.sineDrawW > deliverableW(facts),
    value: ({ sineDrawW }) => sineDrawW,
    limit: deliverableW,
    message: (facts) =>
      `A full sine draws ${watt(facts.sineDrawW)}, but through ${ohm(facts.cableOhm)} nothing above ${watt(deliverableW(facts))} arrives: the board browns out and motorboats.`,
    remedies: leadRemedies,
  },
  {
    code: 'board-voltage-collapses-at-bass-peak',
    severity: 'warning',
    at: '/supply/cable',
    unit: 'V',
    when: sagsAtPeak,
    value: (facts) => lowestAtPeakV(facts) ?? 0,
    limit: boardMinimumV,
    message: (facts) => {
      const lowest = lowestAtPeakV(facts)
      if (lowest === null)
        return `At the peak of a full bass note ${ohm(facts.cableOhm)} of lead cannot deliver what the board asks: it clips early or restarts.`
      const [down, least] = saidApart(lowest, boardMinimumV(facts), 'V')
      return `A full bass note pulls the board down to ${down}; it works from ${facts.amplifier.minimumSupplyV === undefined ? 'about ' : ''}${least} up.`
    },
    remedies: leadRemedies,
  },
  {
    code: 'source-too-weak-for-programme',
    severity: 'warning',
    at: '/supply/currentLimitA',
    unit: 'A',
    when: (facts) => supplied(facts).programmeA > limitA(facts),
    value: (facts) => supplied(facts).programmeA,
    limit: limitA,
    message: (facts) => {
      const [draws, gives] = saidApart(supplied(facts).programmeA, limitA(facts), 'A')
      return `At full volume the programme draws ${draws} on average; the source gives ${gives}.`
    },
    remedies: (facts) => [
      stronger(
        facts,
        `Use a charger or adapter of the same voltage for at least ${ampere(supplied(facts).sineA)}.`,
        supplied(facts).sineA,
      ),
      'Play below full volume.',
      'Wire the drivers for a higher impedance.',
    ],
  },
  {
    code: 'label-beyond-socket',
    severity: 'note',
    at: '/supply/currentLimitA',
    unit: 'A',
    when: (facts) => limitA(facts) > standardA(facts),
    value: limitA,
    limit: standardA,
    message: (facts) =>
      `${ampere(limitA(facts))} are counted on, but by its standard this socket gives ${ampere(standardA(facts))}; beyond that it may switch off.`,
    remedies: (facts) => [
      remedy(`Reckon with ${ampere(standardA(facts))}, or leave the current out.`, [
        put('/supply/currentLimitA', standardA(facts)),
      ]),
      'Keep the figure only when the label at this very socket promises it.',
    ],
  },
  {
    code: 'sine-trips-source',
    severity: 'note',
    at: '/supply/currentLimitA',
    unit: 'A',
    when: (facts) => supplied(facts).sineA > limitA(facts) && supplied(facts).programmeA <= limitA(facts),
    value: (facts) => supplied(facts).sineA,
    limit: limitA,
    message: (facts) => {
      const [draws, gives] = saidApart(supplied(facts).sineA, limitA(facts), 'A')
      return `Music is fine, but a test tone at the clip point draws ${draws} and trips a source of ${gives}.`
    },
    remedies: (facts) => [
      'Keep test tones well below full volume.',
      stronger(facts, `Use a source for at least ${ampere(supplied(facts).sineA)}.`, supplied(facts).sineA),
    ],
  },
  {
    code: 'source-limits-before-fuse',
    severity: 'note',
    at: '/supply/currentLimitA',
    unit: 'A',
    when: (facts) => supplied(facts).fuseA > limitA(facts),
    value: (facts) => supplied(facts).fuseA,
    limit: limitA,
    message: (facts) =>
      `The source gives in at ${ampere(limitA(facts))}, before a fuse of ${ampere(supplied(facts).fuseA)}, sized for a full sine, can blow: the source protects the lead, not the fuse.`,
    remedies: (facts) => fuseRemedies(facts, limitA(facts)),
  },
  {
    code: 'power-bank-switches-off',
    severity: 'warning',
    at: '/supply/cutoffCurrentMa',
    unit: 'mA',
    when: (facts) => supplied(facts).switchesOffWhenQuiet === true,
    value: (facts) => supplied(facts).idleA * 1000,
    limit: ({ cutoffMa }) => cutoffMa ?? 0,
    message: (facts) =>
      `In a pause the board draws ${ampere(supplied(facts).idleA)}; the power bank switches itself off below ${say(facts.cutoffMa ?? 0, 'mA')}.`,
    remedies: (facts) => [
      remedy('Use a power bank with a low-current mode.', [put('/supply/cutoffCurrentMa', 0)]),
      `Keep it awake with ${ohm(supplied(facts).keepAliveOhm ?? 0)} across the supply, rated for at least ${watt(2 * (supplied(facts).keepAliveW ?? 0))}; it shortens the running time.`,
    ],
  },
  {
    code: 'switch-too-weak',
    severity: 'warning',
    at: '/supply/switchRatedA',
    unit: 'A',
    when: (facts) => supplied(facts).worstA > (facts.supply.switchRatedA ?? Number.POSITIVE_INFINITY),
    value: (facts) => supplied(facts).worstA,
    limit: ({ supply }) => supply.switchRatedA ?? 0,
    message: (facts) =>
      `The switch carries up to ${ampere(supplied(facts).worstA)} and is rated for ${ampere(facts.supply.switchRatedA ?? 0)}.`,
    remedies: (facts) => [
      remedy(
        `Use a switch rated for ${ampere(supplied(facts).switchA)} direct current or more.`,
        putWithin('/supply/switchRatedA', supplied(facts).switchA, CURRENTS_A),
      ),
    ],
  },
]
