import type { MeasuredDriver } from '../../schema/driver-measurement.ts'
import type { MeasurementPlan } from '../../schema/driver-measurement-sections.ts'
import type { Assumption } from '../../schema/frame.ts'
import { spread } from '../driver/relations.ts'
import { typicalDriver } from '../driver/typical.ts'
import { E12, nearestPreferred } from '../power/preferred-values.ts'
import { usualRatingW } from '../power/resistor-rating.ts'
import { hertz, say } from '../say.ts'
import { assumed, coneArea, usualMass, usualResonance } from './estimates.ts'
import { settings } from './peak-band.ts'

/** What goes with every measurement of a bare driver. */
export const BENCH_CAUTIONS: readonly string[] = [
  'Unplug the supply of the amplifier before wiring or unwiring anything; a mains-powered generator or amplifier is used closed, as its manual says.',
  'Begin with the level at zero. A bare cone near its resonance moves far at little power: stop when it moves visibly or sounds rough.',
  'Steady tones tire the ear and high ones are loud before they seem so: keep them quiet, and do not lean over the driver.',
]

const USUAL_CONE_MM = 80
const USUAL_RE_OHM = 6
/** A meter reads about this share of the rated impedance. Common practice, no source. */
const RE_OVER_RATED = 0.85
/** Peak of a small driver over its resistance. Common practice, no source. */
const USUAL_PEAK = 7
/** At the driver: a tenth of its travel even at resonance. Common practice, no source. */
const SMALL_CONE_MM = 100
const SMALL_CONE_V = 0.1
const LARGE_CONE_V = 0.3
const FIRST_ROUND = 24
const HIGHEST_HZ = 20_000

function sizeOf({ dimensions, sdCm2 }: MeasuredDriver, at: string): { mm: number; rows: Assumption[] } {
  if (dimensions?.surroundDiameterMm !== undefined) return { mm: dimensions.surroundDiameterMm, rows: [] }
  if (sdCm2 !== undefined) return { mm: 10 * Math.sqrt((4 / Math.PI) * sdCm2), rows: [] }
  return {
    mm: USUAL_CONE_MM,
    rows: [
      {
        at: `${at}/dimensions/surroundDiameterMm`,
        value: USUAL_CONE_MM,
        unit: 'mm',
        why: 'nothing is known of its size; common practice, no source',
      },
    ],
  }
}

function resistanceOf(driver: MeasuredDriver, at: string): { ohm: number; rows: Assumption[] } {
  const { meterOhm, ratedImpedanceOhm } = driver
  if (meterOhm !== undefined) return { ohm: meterOhm, rows: [] }
  const ohm = ratedImpedanceOhm === undefined ? USUAL_RE_OHM : RE_OVER_RATED * ratedImpedanceOhm
  const why = ratedImpedanceOhm === undefined ? 'usual' : `${RE_OVER_RATED} of the rated impedance`
  return {
    ohm,
    rows: [{ at: `${at}/meterOhm`, value: ohm, unit: 'ohm', why: `${why}; common practice, no source` }],
  }
}

/**
 * How to measure a driver that nobody has measured yet: frequencies, resistor, level, mass and box.
 * Source: acoustics practice of small-signal measurement, cone travel below a tenth of its range; common practice, no source.
 */
export function planOf(
  driver: MeasuredDriver,
  at: string,
): { plan: MeasurementPlan; assumptions: Assumption[] } {
  const size = sizeOf(driver, at)
  const re = resistanceOf(driver, at)
  const area = driver.sdCm2 ?? coneArea(size.mm).value
  const resonance = usualResonance(size.mm)
  const mass = usualMass(area)
  const fsHz = Math.min(2000, Math.max(15, resonance.value))
  const vasL = spread({ fsHz, mmsG: mass.value, sdCm2: area }).vasL ?? 1
  const resistorOhm = nearestPreferred(2.5 * re.ohm, E12)
  const driverV = size.mm < SMALL_CONE_MM ? SMALL_CONE_V : LARGE_CONE_V
  const generatorV = driverV * (1 + resistorOhm / (USUAL_PEAK * re.ohm))
  const heatW = (10 * generatorV) ** 2 / resistorOhm
  const frequencyHz = settings(fsHz / 5, HIGHEST_HZ, FIRST_ROUND)
  const plan = {
    id: driver.id,
    expectedFsHz: fsHz,
    frequencyHz,
    resistorOhm,
    resistorPowerW: usualRatingW(heatW),
    generatorV,
    driverV,
    addedMassG: mass.value,
    boxVolumeL: vasL,
    guess: typicalDriver({
      surroundDiameterMm: driver.dimensions?.surroundDiameterMm,
      sdCm2: driver.sdCm2,
      meterOhm: driver.meterOhm,
      ratedImpedanceOhm: driver.ratedImpedanceOhm,
    }),
  }
  return {
    plan: { ...plan, steps: stepsOf(plan) },
    assumptions: [
      ...size.rows,
      ...re.rows,
      assumed(`${at}/freeAir`, 'Hz', resonance),
      assumed(`${at}/withMass/massG`, 'g', mass),
    ],
  }
}

const stepsOf = (plan: Omit<MeasurementPlan, 'steps'>): string[] => [
  'Read the resistance of the driver with a meter; hold the probes together and take that reading off.',
  'Measure the cone from the middle of the surround to its middle opposite.',
  'Clamp the driver upright by its frame, cone axis level, half a metre from walls and table, and let it warm to the room.',
  `With everything off, connect generator, a resistor of ${say(plan.resistorOhm, 'ohm')} (measured with the meter, ${plan.resistorPowerW} W) and the driver in series.`,
  `Turn up slowly to ${say(plan.generatorV, 'V', 2)}; across the driver never more than ${say(plan.driverV, 'V', 2)}.`,
  `At each frequency of the list read the AC voltage across the driver and across the resistor; the resistor in ohm times the first over the second is the impedance. The meter must be good for it: most are up to 400 Hz, many to 1 kHz and more.`,
  `The voltage across the driver rises to a peak, somewhere from ${hertz(plan.expectedFsHz / 2)} to ${hertz(plan.expectedFsHz * 2)}. Take ten more readings close about it, five each side.`,
  `Stick about ${say(plan.addedMassG, 'g', 2)} of putty or coins inside the inner half of the cone, weighed before, and repeat about the new, lower peak.`,
  `Or, instead of the mass, press the driver on a tight closed box of about ${say(plan.boxVolumeL, 'L', 2)} without lining, and repeat about the new, higher peak.`,
  'Give the readings: the answer says how sure each figure is and what to read once more.',
]
