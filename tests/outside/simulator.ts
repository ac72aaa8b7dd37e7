import { type ComplexNumber, type ResultType, Simulation } from 'eecircuit-engine'

/** What a run over frequencies returns: the frequencies and every saved quantity by name. */
export interface AcRun {
  frequencyHz: number[]
  trace: (name: string) => ComplexNumber[]
}

/** What a run over time returns: the moments, at steps the simulator chose, and every saved quantity by name. */
export interface TransientRun {
  timeS: number[]
  trace: (name: string) => number[]
}

const simulation = new Simulation()
let last: Promise<unknown> = simulation.start()

/**
 * Runs one analysis on a general circuit simulator (ngspice, compiled to WebAssembly). Lines are SPICE elements;
 * `save` names voltages and currents of sources. Runs queue up: there is one simulator.
 */
function run(lines: readonly string[], save: readonly string[], analysis: string): Promise<ResultType> {
  const result = last.then(() => {
    simulation.setNetList(['case', ...lines, analysis, `.save ${save.join(' ')}`, '.end'].join('\n'))
    return simulation.runSim()
  })
  last = result.catch(() => undefined)
  return result
}

function byName<Values>(rows: readonly { name: string; values: Values }[]): (name: string) => Values {
  const named = new Map(rows.map(({ name, values }) => [name.toLowerCase(), values]))
  return (name) => {
    const values = named.get(name.toLowerCase())
    if (values === undefined)
      throw new Error(`the simulator saved no ${name}, only ${[...named.keys()].join(', ')}`)
    return values
  }
}

const missing = (what: string) => new Error(`no ${what} data: ${simulation.getError().join('; ')}`)

/** An AC analysis; the sweep as SPICE has it: 'dec 60 10 20k'. */
export async function runAc(
  lines: readonly string[],
  save: readonly string[],
  sweep: string,
): Promise<AcRun> {
  const result = await run(lines, save, `.ac ${sweep}`)
  if (result.dataType !== 'complex') throw missing('AC')
  const trace = byName(result.data)
  return { frequencyHz: trace('frequency').map((value) => value.real), trace }
}

/** A transient analysis from zero to `stopS` in steps of at most `stepS`, from the initial conditions of the elements. */
export async function runTransient(
  lines: readonly string[],
  save: readonly string[],
  stepS: number,
  stopS: number,
): Promise<TransientRun> {
  const result = await run(lines, save, `.tran ${stepS} ${stopS} 0 ${stepS} uic`)
  if (result.dataType !== 'real') throw missing('transient')
  const trace = byName(result.data)
  const timeS = trace('time')
  // A run that the simulator gave up has data as well, up to there.
  if ((timeS.at(-1) ?? 0) < 0.999 * stopS) throw missing('complete transient')
  return { timeS, trace }
}

/** The direct voltages and currents a circuit rests at. */
export async function runOperatingPoint(
  lines: readonly string[],
  save: readonly string[],
): Promise<(name: string) => number> {
  const result = await run(lines, save, '.op')
  if (result.dataType !== 'real') throw missing('operating point')
  const trace = byName(result.data)
  return (name) => trace(name).at(-1) ?? Number.NaN
}

export const modulus = ({ real, img }: ComplexNumber): number => Math.hypot(real, img)
export const phaseDeg = ({ real, img }: ComplexNumber): number => (Math.atan2(img, real) * 180) / Math.PI

/** Where a falling trace passes a level, straight between its points. */
export function fallsThrough(at: readonly number[], values: readonly number[], level: number): number {
  const i = values.findIndex((value, k) => k > 0 && values[k - 1]! > level && value <= level)
  if (i < 0) throw new Error(`never falls through ${level}`)
  return at[i - 1]! + ((at[i]! - at[i - 1]!) * (values[i - 1]! - level)) / (values[i - 1]! - values[i]!)
}

/** Area under a trace by trapezoids. */
export const areaUnder = (at: readonly number[], values: readonly number[]): number =>
  values.reduce(
    (sum, value, i) => (i === 0 ? 0 : sum + ((at[i]! - at[i - 1]!) * (value + values[i - 1]!)) / 2),
    0,
  )

/** Where a high-pass is 3 dB below its highest frequency. */
export function lowerCornerHz({ frequencyHz, trace }: AcRun, node: string): number {
  const gain = trace(node).map(modulus)
  const downwards = [...gain].reverse()
  const logHz = frequencyHz.map(Math.log).reverse()
  return Math.exp(fallsThrough(logHz, downwards, gain.at(-1)! * Math.SQRT1_2))
}
