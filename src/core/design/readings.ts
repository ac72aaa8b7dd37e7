import type { Reading } from '../../schema/design-check.ts'
import type { DesignFacts } from './design-facts.ts'

interface ReadingRow {
  test: (facts: DesignFacts) => string
  unit: string
  /** null where the test does not apply to this build. */
  expected: (facts: DesignFacts) => number | null
  /** Lowest and highest fine reading over the expected one. */
  fine: readonly [number, number]
  ifNot: string
}

// Ranges are common practice, no source, but for those that follow from a standard's own limits.
const ROWS: readonly ReadingRow[] = [
  {
    test: ({ plan }) => `Resistance of one "${plan.main.id}" driver alone, leads off, meter on ohms`,
    unit: 'ohm',
    expected: ({ speaker }) => speaker.driver.reOhm,
    fine: [0.9, 1.1],
    ifNot:
      'Far above: an open coil or a bad joint. Far below: a shorted coil. Subtract what the probes read when they touch.',
  },
  {
    test: () => 'Resistance at the speaker leads of one channel, amplifier not connected',
    unit: 'ohm',
    expected: ({ load }) => load.load.meterOhm,
    fine: [0.85, 1.15],
    ifNot:
      'Half or double: a driver is wired in parallel instead of in series, or the other way round. Do not connect the amplifier before it reads right.',
  },
  {
    test: () => 'Voltage of the source before the board is connected',
    unit: 'V',
    expected: ({ power }) => power.supply.voltageV,
    fine: [0.95, 1.05],
    ifNot: 'Wrong adapter or wrong level negotiated: do not connect the board.',
  },
  {
    test: () => 'Current from the source with no signal, everything connected',
    unit: 'A',
    expected: ({ power }) => power.supply.idleA,
    fine: [0.4, 1.6],
    ifNot:
      'Far above: the board oscillates or an output is shorted; switch off. Nothing: no supply, or the board sleeps.',
  },
  {
    test: () => 'Voltage at the board with music at full volume',
    unit: 'V',
    expected: ({ power }) => power.supply.boardVoltageV,
    fine: [0.92, 1.04],
    ifNot: 'Lower: a lead too long or too thin, or bad contacts.',
  },
  {
    test: () => 'Average current with music at full volume',
    unit: 'A',
    expected: ({ power }) => power.supply.programmeA,
    fine: [0.4, 2],
    ifNot: 'Far above: squashed music, or a channel that clips; turn down and compare.',
  },
  {
    test: () => 'Current through the indicator',
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
    ifNot:
      'Lower: a longer tube or more air than planned. Higher: a shorter tube or less air. A shallow peak: a leak.',
  },
]

/** What a meter should show at each test, in working order; tests that do not apply are left out. */
export const readingsOf = (facts: DesignFacts): Reading[] =>
  ROWS.flatMap(({ test, unit, expected, fine, ifNot }) => {
    const value = expected(facts)
    return value === null
      ? []
      : [{ test: test(facts), expected: value, from: fine[0] * value, to: fine[1] * value, unit, ifNot }]
  })
