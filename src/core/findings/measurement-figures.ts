import type { FigureRow, MeasuredFigure } from '../measurement/figures.ts'
import type { Measured } from '../measurement/measure-driver.ts'
import { areaApartLimitPercent, areaApartPercent, toldAreaCm2 } from '../measurement/told-area.ts'
import { say, significant } from '../say.ts'
import { figureOf, measuredValue } from './measured-figure.ts'
import type { Rule } from './rule.ts'

/** All thresholds of this table: common practice, no source. */
const LIGHT_MASS = 0.25
const HEAVY_MASS = 3
const LARGE_BOX = 0.35
/** From the tiniest coil on a dome to the heaviest woofer for a small box, g on a square centimetre of cone. */
const BELIEVABLE_G_PER_CM2 = { least: 0.015, most: 1.5 }

/** How sure a figure should be before a box is cut for it, percent. */
const SURE_ENOUGH = { fsHz: 5, qts: 12, vasL: 20 } satisfies Partial<Record<MeasuredFigure, number>>
const SYMBOLS: Partial<Record<string, string>> = { fsHz: 'fs', qts: 'Qts', vasL: 'Vas' }

const unsure = (facts: Measured): FigureRow[] =>
  (Object.keys(SURE_ENOUGH) as (keyof typeof SURE_ENOUGH)[]).flatMap((name) => {
    const found = figureOf(facts, name)
    return found !== undefined && found.uncertaintyPercent > SURE_ENOUGH[name] ? [found] : []
  })

const advice = ({ result }: Measured): string[] => {
  const list = result.next.map((next) => next.do)
  return list.length > 0 ? list : ['Measure once more at a lower level, and in a quiet room.']
}

const massOverArea = (facts: Measured): number => measuredValue(facts, 'mmsG') / measuredValue(facts, 'sdCm2')

const isMassBelievable = (facts: Measured): boolean => {
  const share = massOverArea(facts)
  return share >= BELIEVABLE_G_PER_CM2.least && share <= BELIEVABLE_G_PER_CM2.most
}

/** What the figures of a measured driver rest on: mass, test box and cone, and how sure they are. */
export const measurementFigureRules: readonly Rule<Measured>[] = [
  {
    code: 'measurement-mass-guessed',
    severity: 'warning',
    at: ({ at }) => at,
    when: ({ guessed }) => guessed,
    message: (facts) =>
      `Without an added mass or a test box the moving mass is a guess: Vas may be anything from ${significant(figureOf(facts, 'vasL')?.from ?? 0, 2)} to ${significant(figureOf(facts, 'vasL')?.to ?? 0, 2)} L. Only fs, the Qs and Re are measured.`,
    remedies: (facts) => [
      `Measure a second sweep with about ${say(measuredValue(facts, 'mmsG'), 'g', 2)} of putty or coins on the cone.`,
      'Or a second sweep on a tight closed box of known volume.',
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
          `${SYMBOLS[figure] ?? figure} lies between ${significant(from, 3)} and ${significant(to, 3)} ${unit}`.trim(),
        )
        .join('; ')}.`,
    remedies: advice,
  },
  {
    code: 'measurement-mass-unbelievable',
    severity: 'warning',
    at: ({ at, driver }) =>
      driver.withMass !== undefined
        ? `${at}/withMass/massG`
        : driver.inBox !== undefined
          ? `${at}/inBox/volumeL`
          : at,
    unit: 'g',
    when: (facts) => !facts.guessed && measuredValue(facts, 'sdCm2') > 0 && !isMassBelievable(facts),
    value: (facts) => measuredValue(facts, 'mmsG'),
    limit: (facts) => {
      const { least, most } = BELIEVABLE_G_PER_CM2
      return measuredValue(facts, 'sdCm2') * (massOverArea(facts) < least ? least : most)
    },
    message: (facts) =>
      `A moving mass of ${say(measuredValue(facts, 'mmsG'), 'g', 2)} for a cone of ${say(measuredValue(facts, 'sdCm2'), 'cm2', 2)} is no driver's: a weight, the volume of a test box or the size of the cone is not what it is said to be, and Vas, Mms and Bl are wrong with it.`,
    remedies: ({ driver }) => [
      ...(driver.withMass === undefined
        ? []
        : [
            'Look at the weight and its unit again: putty for a small cone is a few grams, not hundredths of one.',
          ]),
      ...(driver.inBox === undefined
        ? []
        : ['Work out the volume of the test box again, and its unit: less the driver, plus its cone.']),
      'Measure the cone again, from the middle of the surround to its middle opposite.',
    ],
  },
  {
    code: 'measurement-mass-too-light',
    severity: 'warning',
    at: ({ at }) => `${at}/withMass/massG`,
    unit: 'g',
    when: ({ driver, fit }) => driver.withMass !== undefined && fit.sought.mass < LIGHT_MASS,
    value: ({ driver }) => driver.withMass?.massG ?? 0,
    limit: (facts) => LIGHT_MASS * measuredValue(facts, 'mmsG'),
    message: (facts) =>
      `The added mass is only ${significant(facts.fit.sought.mass, 2)} of the moving mass: each percent of error in the shift becomes ${significant(2 * (1 + 1 / facts.fit.sought.mass), 2)} percent of Vas.`,
    remedies: (facts) => [`Use about ${say(measuredValue(facts, 'mmsG'), 'g', 2)}.`],
  },
  {
    code: 'measurement-mass-too-heavy',
    severity: 'note',
    at: ({ at }) => `${at}/withMass/massG`,
    unit: 'g',
    when: ({ driver, fit }) => driver.withMass !== undefined && fit.sought.mass > HEAVY_MASS,
    value: ({ driver }) => driver.withMass?.massG ?? 0,
    limit: (facts) => HEAVY_MASS * measuredValue(facts, 'mmsG'),
    message: (facts) =>
      `The added mass is ${significant(facts.fit.sought.mass, 2)} times the moving mass: it may pull the cone out of its rest, and a suspension is softer at so low a frequency.`,
    remedies: (facts) => [
      `Use about ${say(measuredValue(facts, 'mmsG'), 'g', 2)}, with the cone axis level.`,
    ],
  },
  {
    code: 'measurement-box-too-large',
    severity: 'warning',
    at: ({ at }) => `${at}/inBox/volumeL`,
    unit: 'L',
    when: ({ driver, fit }) => driver.inBox !== undefined && fit.sought.stiffness < LARGE_BOX,
    value: ({ driver }) => driver.inBox?.volumeL ?? 0,
    limit: (facts) => measuredValue(facts, 'vasL') / LARGE_BOX,
    message: () =>
      'The test box is so large that it hardly shifts the resonance; Vas is a small difference of large numbers.',
    remedies: (facts) => [`Use a tight box of about ${say(measuredValue(facts, 'vasL'), 'L', 2)} or less.`],
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
      `Added mass and test box contradict each other: together they make a cone of ${say(measuredValue(facts, 'sdCm2'), 'cm2', 3)}, and it is said to have ${say(toldAreaCm2(facts.driver) ?? 0, 'cm2', 3)}. One of mass, volume and cone is wrong, and with it Vas or Mms.`,
    remedies: () => [
      'Measure the cone again, from the middle of the surround to its middle opposite.',
      'Weigh the mass again, and count the volume of the test box again: less the driver, plus its cone.',
      'See that the test box is tight, also round the frame, and that the mass did not come loose.',
    ],
  },
]
