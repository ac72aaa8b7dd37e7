import type { FigureRow, MeasuredFigure } from '../measurement/figures.ts'
import type { Measured } from '../measurement/measure-driver.ts'
import { peakBand, settings } from '../measurement/peak-band.ts'
import { areaApartLimitPercent, areaApartPercent, toldAreaCm2 } from '../measurement/told-area.ts'
import { freeAirOf } from '../measurement/unknowns.ts'
import { hertz, ohm, say, significant } from '../say.ts'
import type { Rule } from './rule.ts'

/** All thresholds of this table: common practice, no source. */
const NOISY_PERCENT = 4
const FEW_ON_PEAK = 5
const MANY_OUTLIERS = 0.1
const OPINIONS_APART_PERCENT = 8
const METER_APART_PERCENT = 6
const LIGHT_MASS = 0.25
const HEAVY_MASS = 3
const LARGE_BOX = 0.35
const COIL_SEEN_ABOVE_FS = 8

/** How sure a figure should be before a box is cut for it, percent. */
const SURE_ENOUGH = { fsHz: 5, qts: 12, vasL: 20 } satisfies Partial<Record<MeasuredFigure, number>>

const row = ({ result }: Measured, name: string): FigureRow | undefined =>
  result.figures.find(({ figure }) => figure === name)
const value = (facts: Measured, name: string): number => row(facts, name)?.value ?? 0

const unsure = (facts: Measured) =>
  (Object.keys(SURE_ENOUGH) as (keyof typeof SURE_ENOUGH)[]).flatMap((name) => {
    const found = row(facts, name)
    return found !== undefined && found.uncertaintyPercent > SURE_ENOUGH[name] ? [found] : []
  })

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
    return by === null ? 0 : 100 * Math.abs(Math.log(by / value(facts, name)))
  }
  return Math.max(apart('fsHz'), apart('qts'))
}

const meterApart = (facts: Measured): number => {
  const { meterOhm } = facts.driver
  // The meter is in the fit; the sweep alone says how far its lowest reading is above the meter.
  const lowest = Math.min(...facts.sweeps.freeAir.ohm) - (facts.driver.leadOhm ?? 0)
  if (meterOhm === undefined) return 0
  const byFit = 100 * Math.abs(Math.log(value(facts, 'reOhm') / meterOhm))
  const above = 100 * Math.log(meterOhm / Math.max(lowest, 1e-3))
  return Math.max(byFit, above)
}

const more = (facts: Measured): string => {
  const { lowerHz, upperHz } = peakBand(freeAirOf(facts.fit.sought))
  return `Read again at ${settings(0.85 * lowerHz, 1.18 * upperHz, 10)
    .map((hz) => significant(hz, 3))
    .join(', ')} Hz.`
}
const advice = ({ result }: Measured): string[] => {
  const list = result.next.map((next) => next.do)
  return list.length > 0 ? list : ['Measure once more at a lower level, and in a quiet room.']
}

/** How far a measured driver is to be believed. */
export const measurementRules: readonly Rule<Measured>[] = [
  {
    code: 'measurement-mass-guessed',
    severity: 'warning',
    at: ({ at }) => at,
    when: ({ guessed }) => guessed,
    message: (facts) =>
      `Without an added mass or a test box the moving mass is a guess: vasL may be anything from ${significant(row(facts, 'vasL')?.from ?? 0, 2)} to ${significant(row(facts, 'vasL')?.to ?? 0, 2)} L. Only fsHz, the Qs and reOhm are measured.`,
    remedies: (facts) => [
      `Measure a second sweep with about ${say(value(facts, 'mmsG'), 'g', 2)} of putty or coins on the cone (withMass).`,
      'Or a second sweep on a tight closed box of known volume (inBox).',
    ],
  },
  {
    code: 'measurement-figure-unsure',
    severity: 'warning',
    at: ({ at }) => at,
    unit: 'percent',
    when: (facts) => !facts.guessed && unsure(facts).length > 0,
    value: (facts) => Math.max(...unsure(facts).map(({ uncertaintyPercent }) => uncertaintyPercent)),
    message: (facts) =>
      `Too unsure to cut wood for: ${unsure(facts)
        .map(({ figure, from, to, unit }) =>
          `${figure} lies between ${significant(from, 3)} and ${significant(to, 3)} ${unit}`.trim(),
        )
        .join('; ')}.`,
    remedies: advice,
  },
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
      `The meter says ${ohm(facts.driver.meterOhm ?? 0)}, the sweep ${ohm(value(facts, 'reOhm'))}: leads are counted in one of them, or the resistor of the sweep is not what it says.`,
    remedies: () => [
      'Hold the probes of the meter together and take that reading off.',
      'Measure the series resistor with the same meter and use that value.',
      'Give the resistance of clips and leads as leadOhm.',
    ],
  },
  {
    code: 'measurement-mass-too-light',
    severity: 'warning',
    at: ({ at }) => `${at}/withMass/massG`,
    unit: 'g',
    when: ({ driver, fit }) => driver.withMass !== undefined && fit.sought.mass < LIGHT_MASS,
    value: ({ driver }) => driver.withMass?.massG ?? 0,
    limit: (facts) => LIGHT_MASS * value(facts, 'mmsG'),
    message: (facts) =>
      `The added mass is only ${significant(facts.fit.sought.mass, 2)} of the moving mass: each percent of error in the shift becomes ${significant(2 * (1 + 1 / facts.fit.sought.mass), 2)} percent of vasL.`,
    remedies: (facts) => [`Use about ${say(value(facts, 'mmsG'), 'g', 2)}.`],
  },
  {
    code: 'measurement-mass-too-heavy',
    severity: 'note',
    at: ({ at }) => `${at}/withMass/massG`,
    unit: 'g',
    when: ({ driver, fit }) => driver.withMass !== undefined && fit.sought.mass > HEAVY_MASS,
    value: ({ driver }) => driver.withMass?.massG ?? 0,
    limit: (facts) => HEAVY_MASS * value(facts, 'mmsG'),
    message: (facts) =>
      `The added mass is ${significant(facts.fit.sought.mass, 2)} times the moving mass: it may pull the cone out of its rest, and a suspension is softer at so low a frequency.`,
    remedies: (facts) => [`Use about ${say(value(facts, 'mmsG'), 'g', 2)}, with the cone axis level.`],
  },
  {
    code: 'measurement-box-too-large',
    severity: 'warning',
    at: ({ at }) => `${at}/inBox/volumeL`,
    unit: 'L',
    when: ({ driver, fit }) => driver.inBox !== undefined && fit.sought.stiffness < LARGE_BOX,
    value: ({ driver }) => driver.inBox?.volumeL ?? 0,
    limit: (facts) => value(facts, 'vasL') / LARGE_BOX,
    message: () =>
      'The test box is so large that it hardly shifts the resonance; vasL is a small difference of large numbers.',
    remedies: (facts) => [`Use a tight box of about ${say(value(facts, 'vasL'), 'L', 2)} or less.`],
  },
  {
    code: 'measurement-mass-and-box-contradict',
    severity: 'warning',
    at: ({ at }) => at,
    unit: 'percent',
    when: (facts) => areaApartPercent(facts) > areaApartLimitPercent(facts),
    value: areaApartPercent,
    limit: areaApartLimitPercent,
    message: (facts) =>
      `Added mass and test box contradict each other: together they make a cone of ${say(value(facts, 'sdCm2'), 'cm2', 3)}, and it is said to have ${say(toldAreaCm2(facts.driver) ?? 0, 'cm2', 3)}. One of mass, volume and cone is wrong, and with it vasL or mmsG.`,
    remedies: () => [
      'Measure the cone again, from the middle of the surround to its middle opposite.',
      'Weigh the mass again, and count the volume of the test box again: less the driver, plus its cone.',
      'See that the test box is tight, also round the frame, and that the mass did not come loose.',
    ],
  },
  {
    code: 'measurement-coil-not-seen',
    severity: 'note',
    at: free,
    unit: 'Hz',
    when: (facts) => highestHz(facts) < COIL_SEEN_ABOVE_FS * value(facts, 'fsHz'),
    value: highestHz,
    limit: (facts) => COIL_SEEN_ABOVE_FS * value(facts, 'fsHz'),
    message: (facts) =>
      `The sweep ends at ${hertz(highestHz(facts))}, too low to tell the coil: leMh is little more than a guess, which matters for crossovers and treble, not for the box.`,
    remedies: () => ['Add a few readings up to 10 kHz, if the meter is good for it.'],
  },
]
