import type { FactoryFunctionMap } from 'mathjs'

/** What the rest of the house asks of mathjs; nothing else imports it. */
export interface MathEngine {
  /** Value in another unit, or null when the units measure different things. */
  convert: (value: number, from: string, to: string) => number | null
  /** true when the text is a unit that mathjs knows. */
  knows: (unit: string) => boolean
  /** Value of one of our own printed formulas; never called with text of a client. */
  evaluate: (formula: string, values: Record<string, number>) => number
}

let engine: Promise<MathEngine> | undefined

/** The engine, loaded at the first call: importing mathjs takes from 0.7 s to some seconds, a call microseconds. */
export const mathEngine = (): Promise<MathEngine> => {
  engine ??= load()
  return engine
}

/** The parts of mathjs that units and our formulas need. */
const PARTS = [
  'unitDependencies',
  'compileDependencies',
  'addDependencies',
  'subtractDependencies',
  'multiplyDependencies',
  'divideDependencies',
  'powDependencies',
  'unaryMinusDependencies',
  'sqrtDependencies',
  'cbrtDependencies',
  'expDependencies',
  'logDependencies',
  'log10Dependencies',
  'sinDependencies',
  'cosDependencies',
  'tanDependencies',
  'atanDependencies',
  'absDependencies',
  'ceilDependencies',
  'minDependencies',
  'maxDependencies',
  'piDependencies',
  'eDependencies',
] as const

async function load(): Promise<MathEngine> {
  const mathjs = await import('mathjs')
  const parts: FactoryFunctionMap = {}
  for (const name of PARTS) {
    const part = mathjs[name]
    if (part !== undefined) parts[name] = part
  }
  const math = mathjs.create(parts)

  const parse = (value: number, unit: string) => {
    try {
      return math.unit(value, unit)
    } catch {
      return undefined
    }
  }

  return {
    knows: (unit) => parse(1, unit) !== undefined,
    convert: (value, from, to) => {
      const given = parse(value, from)
      return given?.equalBase(math.unit(to)) ? given.toNumber(to) : null
    },
    evaluate: (formula, values) => {
      const result: unknown = math.compile(formula).evaluate({ ...values })
      if (typeof result === 'number' && Number.isFinite(result)) return result
      throw new Error(`the printed formula "${formula}" does not come out as a number`)
    },
  }
}
