import type { Measured } from '../measurement/measure-driver.ts'
import { peakBand, settings } from '../measurement/peak-band.ts'
import { freeAirOf } from '../measurement/unknowns.ts'
import { hertz, ohm, significant } from '../say.ts'
import { measuredValue } from './measured-figure.ts'
import type { Rule } from './rule.ts'

/** All thresholds of this table: common practice, no source. */
const NOISY_PERCENT = 4
const FEW_ON_PEAK = 5
const MANY_OUTLIERS = 0.1
const OPINIONS_APART_PERCENT = 8
const METER_APART_PERCENT = 6
const COIL_SEEN_ABOVE_FS = 8
const LEAST_RESISTANCE_OHM = 1
/** Coil over print, with clips and a fit that are a little off; what this looks for is wrong by two and more. */
const OVER_PRINT = { least: 0.5, most: 1.25 }

const free = ({ at }: Measured): string => `${at}/freeAir`
const outlierShare = ({ result, fit }: Measured): number =>
  result.outliers.length / fit.parts.reduce((sum, { measured }) => sum + measured.ohm.length, 0)

const highestHz = ({ sweeps }: Measured): number => sweeps.freeAir.frequencyHz.at(-1) ?? 0

/** The largest difference of the hand formulas from the fit, percent. */
function opinionsApart(facts: Measured): number {
  const opinion = facts.result.secondOpinion
  if (opinion === null) return 0
  const apart = (name: 'fsHz' | 'qts') => {
    const by = opinion[name]
    return by === null ? 0 : 100 * Math.abs(Math.log(by / measuredValue(facts, name)))
  }
  return Math.max(apart('fsHz'), apart('qts'))
}

/** Lowest reading in free air that counts, less the lead, ohm. */
function lowestOhm({ driver, fit }: Measured): number {
  const kept = fit.parts
    .filter(({ sweep }) => sweep === 'freeAir')
    .flatMap(({ measured, outliers }) => [...measured.ohm].filter((_, i) => !outliers.includes(i)))
  return Math.max(1e-3, Math.min(...kept) - (driver.leadOhm ?? 0))
}

/**
 * Resistance as the sweep has it, ohm. The meter is in the fit and draws it to itself; what no driver does is to read
 * less than its resistance, so the lowest reading is taken where it lies further below the meter than the fit does.
 */
function sweepOhm(facts: Measured): number {
  const fitted = measuredValue(facts, 'reOhm')
  const meterOhm = facts.driver.meterOhm ?? fitted
  const lowest = lowestOhm(facts)
  return meterOhm / lowest > Math.max(fitted / meterOhm, meterOhm / fitted) ? lowest : fitted
}

function meterApart(facts: Measured): number {
  const { meterOhm } = facts.driver
  return meterOhm === undefined ? 0 : 100 * Math.abs(Math.log(sweepOhm(facts) / meterOhm))
}

/** The resistances that a print stands for, ohm. */
const printedRange = ({ driver: { ratedImpedanceOhm = 0 } }: Measured) => ({
  leastOhm: OVER_PRINT.least * ratedImpedanceOhm,
  mostOhm: OVER_PRINT.most * ratedImpedanceOhm,
})

/** Whether the print alone speaks against the readings: a meter would tell more, and of a very low coil the table does. */
function isAgainstPrint(facts: Measured): boolean {
  const { meterOhm, ratedImpedanceOhm } = facts.driver
  const reOhm = measuredValue(facts, 'reOhm')
  if (meterOhm !== undefined || ratedImpedanceOhm === undefined || reOhm < LEAST_RESISTANCE_OHM) return false
  const { leastOhm, mostOhm } = printedRange(facts)
  return reOhm < leastOhm || reOhm > mostOhm
}

const more = (facts: Measured): string => {
  const { lowerHz, upperHz } = peakBand(freeAirOf(facts.fit.sought))
  return `Read again at ${settings(0.85 * lowerHz, 1.18 * upperHz, 10)
    .map((hz) => significant(hz, 3))
    .join(', ')} Hz.`
}

/** How far the readings of a measured driver are to be believed. */
export const measurementReadingRules: readonly Rule<Measured>[] = [
  {
    code: 'measurement-too-few-points',
    severity: 'warning',
    at: free,
    when: ({ readingsOnPeak }) => readingsOnPeak < FEW_ON_PEAK,
    value: ({ readingsOnPeak }) => readingsOnPeak,
    limit: () => FEW_ON_PEAK,
    message: ({ readingsOnPeak }) =>
      `Only ${readingsOnPeak} ${readingsOnPeak === 1 ? 'reading stands' : 'readings stand'} on the peak, which decides resonance and Q: too few points to see a wrong one among them.`,
    remedies: (facts) => [more(facts)],
  },
  {
    code: 'measurement-noisy',
    severity: 'warning',
    at: free,
    unit: 'percent',
    when: ({ result }) => result.fit.misfitPercent > NOISY_PERCENT,
    value: ({ result }) => result.fit.misfitPercent,
    limit: () => NOISY_PERCENT,
    message: ({ result }) =>
      `The readings lie ${significant(result.fit.misfitPercent, 2)} % off the nearest driver on average: noise, hum, a level that moves the cone too far, or a driver that rubs.`,
    remedies: () => [
      'Lower the level by half and measure again: if the curve changes, it was too loud.',
      'Move the cone by hand, evenly round its edge: a scraping coil is no driver to build with.',
      'Keep the leads off mains wires; use a larger resistor voltage than the last digit of the meter.',
    ],
  },
  {
    code: 'measurement-outliers',
    severity: 'note',
    at: free,
    when: (facts) => facts.result.outliers.length > 0 && outlierShare(facts) <= MANY_OUTLIERS,
    value: ({ result }) => result.outliers.length,
    message: ({ result }) =>
      `Left out as wrong readings: ${result.outliers
        .map(
          ({ frequencyHz, measuredOhm, fittedOhm }) =>
            `${ohm(measuredOhm)} at ${hertz(frequencyHz)}, where the others say ${ohm(fittedOhm)}`,
        )
        .join('; ')}.`,
    remedies: () => ['Read these frequencies again; nothing else is needed.'],
  },
  {
    code: 'measurement-many-outliers',
    severity: 'warning',
    at: free,
    unit: 'percent',
    when: (facts) => outlierShare(facts) > MANY_OUTLIERS,
    value: (facts) => 100 * outlierShare(facts),
    limit: () => 100 * MANY_OUTLIERS,
    message: (facts) =>
      `${facts.result.outliers.length} readings do not belong to the rest and were left out. So many are no slips: the driver has a second resonance, or the leads a loose contact.`,
    remedies: (facts) => [
      'See that nothing touches or rattles, and that no wall or box is close behind the cone.',
      'Press the clips on and measure again.',
      more(facts),
    ],
  },
  {
    code: 'measurement-opinions-differ',
    severity: 'note',
    at: free,
    unit: 'percent',
    when: (facts) => opinionsApart(facts) > OPINIONS_APART_PERCENT,
    value: opinionsApart,
    limit: () => OPINIONS_APART_PERCENT,
    message: (facts) =>
      `The hand formulas differ from the fit by ${significant(opinionsApart(facts), 2)} %. Coarse steps about the peak do that; the fit takes all readings and is the answer.`,
    remedies: (facts) => [more(facts)],
  },
  {
    code: 'measurement-meter-disagrees',
    severity: 'warning',
    at: ({ at }) => `${at}/meterOhm`,
    unit: 'percent',
    when: (facts) => meterApart(facts) > METER_APART_PERCENT,
    value: meterApart,
    limit: () => METER_APART_PERCENT,
    message: (facts) =>
      `The meter says ${ohm(facts.driver.meterOhm ?? 0)}, the sweep ${ohm(sweepOhm(facts))}: leads are counted in one of them, or the resistor of the sweep is not what it says.`,
    remedies: () => [
      'Hold the probes of the meter together and take that reading off.',
      'Measure the series resistor with the same meter and use that value.',
      'Give the resistance of clips and leads beside the readings.',
    ],
  },
  {
    code: 'measurement-resistance-low',
    severity: 'warning',
    at: free,
    unit: 'ohm',
    when: (facts) => measuredValue(facts, 'reOhm') < LEAST_RESISTANCE_OHM,
    value: (facts) => measuredValue(facts, 'reOhm'),
    limit: () => LEAST_RESISTANCE_OHM,
    message: (facts) =>
      `The coil comes out at ${ohm(measuredValue(facts, 'reOhm'))}, less than nearly every driver has. If all readings are too low by one factor, so are the impedance that an amplifier sees and the square of the motor strength; resonance, Q and volume stay right.`,
    remedies: () => [
      'Hold a meter to the terminals, less its own leads, and give what it reads.',
      'Measure the series resistor with the same meter: a resistor of ten times the value makes all readings ten times too low.',
      'See that the impedances are in ohm.',
    ],
  },
  {
    code: 'measurement-print-disagrees',
    severity: 'warning',
    at: free,
    unit: 'ohm',
    when: isAgainstPrint,
    value: (facts) => measuredValue(facts, 'reOhm'),
    limit: (facts) => {
      const { leastOhm, mostOhm } = printedRange(facts)
      return measuredValue(facts, 'reOhm') > mostOhm ? mostOhm : leastOhm
    },
    message: (facts) => {
      const { leastOhm, mostOhm } = printedRange(facts)
      return `A driver rated ${ohm(facts.driver.ratedImpedanceOhm ?? 0)} has a coil of ${ohm(leastOhm)} to ${ohm(mostOhm)}; by the readings it has ${ohm(measuredValue(facts, 'reOhm'))}. Voltages in the place of ohm do that, a series resistor that is not what it says, or a print that is wrong.`
    },
    remedies: () => [
      'Give ohm: the series resistor times the voltage across the driver, over the voltage across the resistor.',
      'Measure the series resistor with the meter too.',
      'Hold a meter to the terminals and give what it reads: where it agrees with the readings, the print is wrong.',
    ],
  },
  {
    code: 'measurement-coil-not-seen',
    severity: 'note',
    at: free,
    unit: 'Hz',
    when: (facts) => highestHz(facts) < COIL_SEEN_ABOVE_FS * measuredValue(facts, 'fsHz'),
    value: highestHz,
    limit: (facts) => COIL_SEEN_ABOVE_FS * measuredValue(facts, 'fsHz'),
    message: (facts) =>
      `The sweep ends at ${hertz(highestHz(facts))}, too low to tell the coil: Le is little more than a guess, which matters for crossovers and treble, not for the box.`,
    remedies: () => ['Add a few readings up to 10 kHz, if the meter is good for it.'],
  },
]
