import { hertz } from '../say.ts'
import type { Rule } from './rule.ts'

/** A driver whose data are a guess, and what that does to the box. */
export interface GuessedFacts {
  /** Pointer to its parameters in the request. */
  at: string
  id: string
  /** The resonances it may have in free air, null where none is known; and in the air of this box with its opening shut. */
  freeHz: Span | null
  inBoxHz: Span | null
}

export interface Span {
  from: number
  to: number
}

const spanText = ({ from, to }: Span): string => `from ${hertz(from)} to ${hertz(to)}`

function spreadText({ freeHz, inBoxHz }: GuessedFacts): string {
  if (inBoxHz !== null)
    return `: in the air of this box, closed, it may resonate anywhere ${spanText(inBoxHz)}`
  return freeHz === null ? '' : `: it may resonate anywhere ${spanText(freeHz)}`
}

/** Applied to each kind of driver whose parameters are said to be guessed. */
export const guessedDriverRules: readonly Rule<GuessedFacts>[] = [
  {
    code: 'driver-data-guessed',
    severity: 'warning',
    at: ({ at }) => at,
    when: () => true,
    message: (facts) =>
      `The data of "${facts.id}" are a guess${spreadText(facts)}. Bass, tuning and limits are no more than a plan.`,
    remedies: () => [
      'Measure it before the first cut: a generator, a resistor in series and a meter, once free and once with a mass on the cone. The measurement of drivers says how, before any reading is taken; what it then finds takes the place of the guess.',
      'If the box must be built first, build it closed and the front so that it can be taken off again.',
    ],
  },
]
