import type { Reading } from '../../schema/design-check.ts'
import { driverResistanceOhm } from '../load/driver-resistance.ts'
import { partsOf } from '../load/wiring-parts.ts'
import type { DesignFacts } from './design-facts.ts'

interface ReadingRow {
  test: string | ((facts: DesignFacts) => string)
  unit: string
  /** null where the test does not apply to this build. */
  expected: (facts: DesignFacts) => number | null
  /** Lowest and highest fine reading over the expected one, or the two readings themselves. */
  fine: readonly [number, number] | ((facts: DesignFacts) => readonly [number, number])
  ifNot: string | ((facts: DesignFacts) => string)
}

const isPack = ({ design }: DesignFacts): boolean => design.supply.kind === 'cells'

const hasParts = ({ plan }: DesignFacts): boolean =>
  partsOf(plan.wiring).some(({ part }) => typeof part !== 'string')

// Ranges are common practice, no source, but for those that follow from a standard's own limits.
const ROWS: readonly ReadingRow[] = [
  {
    test: 'Resistance at the speaker leads of one channel, amplifier not connected',
    unit: 'ohm',
    expected: ({ load }) => load.load.meterOhm,
    fine: [0.85, 1.15],
    ifNot: (facts) =>
      hasParts(facts)
        ? 'A part of the crossover is missing, shorted or in the wrong place. Do not connect the amplifier before it reads right.'
        : 'Half or double: a driver is wired in parallel instead of in series, or the other way round. Do not connect the amplifier before it reads right.',
  },
  {
    test: 'Voltage of the source before the board is connected',
    unit: 'V',
    expected: ({ power }) => power.supply.voltageV,
    fine: (facts) =>
      isPack(facts)
        ? [facts.power.supply.lowestVoltageV, facts.power.supply.highestVoltageV]
        : [0.95 * facts.power.supply.voltageV, 1.05 * facts.power.supply.voltageV],
    ifNot: (facts) =>
      isPack(facts)
        ? 'Lower: the pack is empty, charge it. Higher: it has more cells than planned; do not connect the board.'
        : 'Wrong adapter or wrong level negotiated: do not connect the board.',
  },
  {
    test: 'Direct voltage at each speaker terminal against the other, board on, no signal, no driver connected',
    unit: 'V',
    expected: () => 0,
    fine: () => [-0.05, 0.05],
    ifNot:
      'Direct current burns a driver: find the fault before you connect one. A single-ended output needs its capacitor.',
  },
  {
    test: 'Current from the source with no signal, everything connected',
    unit: 'A',
    expected: ({ power }) => power.supply.idleA,
    fine: [0.4, 1.6],
    ifNot:
      'Far above: the board oscillates or an output is shorted; switch off. Nothing: no supply, or the board sleeps.',
  },
  {
    test: 'Voltage at the board with music at full volume',
    unit: 'V',
    expected: ({ power }) => power.supply.boardVoltageV,
    fine: (facts) => {
      const { boardVoltageV, lowestVoltageV, highestVoltageV } = facts.power.supply
      const board = boardVoltageV ?? 0
      return isPack(facts) ? [0.92 * lowestVoltageV, highestVoltageV] : [0.92 * board, 1.04 * board]
    },
    ifNot: 'Lower: a lead too long or too thin, or bad contacts.',
  },
  {
    test: 'Average current with music at full volume',
    unit: 'A',
    expected: ({ power }) => power.supply.programmeA,
    fine: [0.4, 2],
    ifNot: 'Far above: squashed music, or a channel that clips; turn down and compare.',
  },
  {
    test: 'Current through the indicator',
    unit: 'mA',
    expected: ({ power }) => power.indicator?.currentMa ?? null,
    fine: [0.8, 1.2],
    ifNot: 'Nothing: the lamp is the wrong way round. Far above: a resistor of the wrong value.',
  },
  {
    test: ({ design }) =>
      design.box.kind === 'closed'
        ? 'Frequency of the impedance peak of the finished box'
        : 'Frequency of the impedance dip between the two peaks of the finished box',
    unit: 'Hz',
    expected: ({ speaker }) => speaker.boxHz,
    fine: [0.92, 1.08],
    ifNot: ({ design }) =>
      design.box.kind === 'closed'
        ? 'Lower: more air than planned. Higher: less air. A shallow peak: a leak, or a filling that is too dense.'
        : 'Lower: a longer port or more air than planned. Higher: a shorter port or less air. A shallow peak: a leak.',
  },
]

function driverReadings({ design }: DesignFacts): Reading[] {
  return design.drivers.flatMap((driver) => {
    const ohm = driverResistanceOhm(driver)
    if (ohm === undefined) return []
    return [
      {
        test: `Resistance of one "${driver.id}" driver alone, leads off, meter on ohms`,
        expected: ohm,
        from: 0.9 * ohm,
        to: 1.1 * ohm,
        unit: 'ohm',
        ifNot:
          'Far above: an open coil or a bad joint. Far below: a shorted coil. Subtract what the probes read when they touch.',
      },
    ]
  })
}

function readingOf(row: ReadingRow, facts: DesignFacts): Reading[] {
  const expected = row.expected(facts)
  if (expected === null) return []
  const [from, to] =
    typeof row.fine === 'function' ? row.fine(facts) : [row.fine[0] * expected, row.fine[1] * expected]
  const text = (value: ReadingRow['test']) => (typeof value === 'string' ? value : value(facts))
  return [{ test: text(row.test), expected, from, to, unit: row.unit, ifNot: text(row.ifNot) }]
}

/** What a meter should show at each test, in working order; tests that do not apply are left out. */
export const readingsOf = (facts: DesignFacts): Reading[] => [
  ...driverReadings(facts),
  ...ROWS.flatMap((row) => readingOf(row, facts)),
]
