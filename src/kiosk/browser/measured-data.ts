import { type Draft, type Json, valueAt, withValue } from './draft.ts'

/** Parameters that readings or a guess brought, by their names in the design. */
export interface DriverData {
  parameters: Draft
  guessed: boolean
  /** Measured, but something speaks against it: it counts as a guess until it is measured without. */
  doubted?: boolean
}

/**
 * The driver with what was found. What was measured takes the place of its figures; a guess only fills what is empty.
 * What an earlier guess or reading (`before`) brought and nobody has changed gives way to either; what else was typed stays.
 */
export function withFound(
  draft: Draft,
  driver: number,
  { parameters, guessed, doubted = false }: DriverData,
  before: Draft = {},
): Draft {
  const at = (name: string) => `/drivers/${driver}/parameters/${name}`
  const old = Object.keys(before).filter((name) => valueAt(draft, at(name)) === before[name])
  const typed = old.reduce((now, name) => withValue(now, at(name), undefined), draft)
  const has = (name: string) => valueAt(typed, at(name)) !== undefined
  const fits = (name: string) => !guessed || (!has(name) && !(OF_TOTAL.includes(name) && has('qts')))
  const found = Object.entries(parameters)
    .filter(([name]) => fits(name))
    .reduce((now, [name, value]) => withValue(now, at(name), value), typed)
  // A total that was typed contradicts the parts that were measured.
  const whole =
    !guessed && OF_TOTAL.every((name) => name in parameters) && !('qts' in parameters)
      ? withValue(found, at('qts'), undefined)
      : found
  const isGuess = guessed || doubted || isGuessLeft(whole, driver, { parameters, before, was: draft })
  const kept = withValue(whole, `/drivers/${driver}/guessed`, isGuess ? true : undefined)
  return valueAt(kept, `/drivers/${driver}/parameters`) === undefined
    ? withValue(kept, `/drivers/${driver}/parameters`, {})
    : kept
}

/** What a print says, which nobody guesses. */
const PRINTED = ['ratedImpedanceOhm', 'ratedPowerW']
/** A guess and a measurement may well agree on these. */
const AGREED = ['reOhm', 'sdCm2']

/**
 * Whether figures of a guess may stand beside the measured ones: those that this page brought have given way, but of a
 * guess that came with a file or a link nobody knows which they were.
 */
function isGuessLeft(
  draft: Draft,
  driver: number,
  { parameters, before, was }: { parameters: Draft; before: Draft; was: Draft },
): boolean {
  const left = Object.keys(valueAt(draft, `/drivers/${driver}/parameters`) ?? {})
  return (
    !isOwnGuess(was, driver, before) && left.some((name) => !(name in parameters) && !PRINTED.includes(name))
  )
}

/** Whether the driver is no guess, or one that this page brought (`before`) and knows the figures of. */
export const isOwnGuess = (draft: Draft, driver: number, before: Draft = {}): boolean =>
  valueAt(draft, `/drivers/${driver}/guessed`) !== true ||
  Object.keys(before).some(
    (name) =>
      !AGREED.includes(name) && valueAt(draft, `/drivers/${driver}/parameters/${name}`) === before[name],
  )

/** Two dampings that make up the total one: beside a typed total a guess of them would contradict it. */
const OF_TOTAL = ['qes', 'qms']

/** What the form knows of a driver and its measuring asks for. */
const ASKED: readonly [string, string][] = [
  ['reOhm', 'meterOhm'],
  ['ratedImpedanceOhm', 'ratedImpedanceOhm'],
  ['sdCm2', 'sdCm2'],
]

/** Readings with what the form already holds; a figure that a guess brought was never read off anything. */
export function readingsFor(
  draft: Draft,
  driver: number,
  { id, readings, found = {} }: { id: string; readings: Draft | undefined; found: Draft | undefined },
): Draft {
  const named: Draft = withValue(readings ?? {}, '/drivers/0/id', id)
  return ASKED.reduce((now, [name, asked]) => {
    const value: Json | undefined = valueAt(draft, `/drivers/${driver}/parameters/${name}`)
    const isKnown = valueAt(now, `/drivers/0/${asked}`) !== undefined
    return isKnown || value === undefined || value === found[name]
      ? now
      : withValue(now, `/drivers/0/${asked}`, value)
  }, named)
}
