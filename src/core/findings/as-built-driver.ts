import { type AsBuiltFacts, strengthOf } from '../as-built/facts.ts'
import type { FigureName } from '../as-built/judged.ts'
import { hertz, say, significant } from '../say.ts'
import type { CauseRule } from './as-built.ts'
import { isBeyondLining, measured } from './as-built-text.ts'

const DRIVER_FIGURES = {
  driverResonanceHz: (value) => `fs ${hertz(value)}`,
  driverQms: (value) => `Qms ${significant(value, 2)}`,
  motorStrengthTm: (value) => `motor strength ${say(value, 'T.m')}`,
} satisfies Partial<Record<FigureName, (value: number) => string>>

const NAMES = ['driverResonanceHz', 'driverQms', 'motorStrengthTm'] as const
type DriverFigure = (typeof NAMES)[number]

const off = (facts: AsBuiltFacts): DriverFigure[] =>
  NAMES.filter((name) => Math.abs(strengthOf(facts, name)) > 1)

function figureText({ judged }: AsBuiltFacts, name: DriverFigure): string {
  const { measured = null, planned = null } = judged.get(name)?.row ?? {}
  const text = DRIVER_FIGURES[name]
  return `${text(measured ?? 0)} instead of ${text(planned ?? 0)}`
}

function beyondLining(facts: AsBuiltFacts): string {
  if (!isBeyondLining(facts)) return ''
  const q = significant(measured(facts, 'absorptionQ'), 2)
  return `No lining absorbs as much as this curve asks for (absorption QA ${q}): the readings are of another box, or of a driver in free air. `
}

function otherDriver(facts: AsBuiltFacts): string {
  const names = off(facts)
  return names.length === 0
    ? 'Compare what was measured with the plan before anything is changed.'
    : `The driver is not the one of the plan: ${names.map((name) => figureText(facts, name)).join(', ')}. Height and place of the peaks say so; the moving mass was taken from its data.`
}

/** Comes before every cause that is only more than is still good. */
const CERTAIN = 1000

/** The drivers as they show through the box. */
export const asBuiltDriverRules: readonly CauseRule[] = [
  {
    code: 'as-built-driver-data-off',
    severity: 'warning',
    at: ({ planned }) => `/design/drivers/${planned.mainIndex}/parameters`,
    when: (facts) => off(facts).length > 0 || isBeyondLining(facts),
    strength: (facts) =>
      isBeyondLining(facts)
        ? CERTAIN
        : Math.max(...off(facts).map((name) => Math.abs(strengthOf(facts, name)))),
    message: (facts) => [beyondLining(facts), otherDriver(facts)].join(''),
    remedies: () => [
      'Measure the driver alone and put its own data into the design: those of a salvaged or unplayed driver are seldom as printed.',
      'Let a new or stiff driver play an hour at moderate level and measure again.',
    ],
  },
]
