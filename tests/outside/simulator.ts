import { type ComplexNumber, Simulation } from 'eecircuit-engine'

/** One quantity over the frequencies of a run. */
type Trace = ComplexNumber[]

/** What an AC run returns: the frequencies and every saved quantity by name. */
export interface AcRun {
  frequencyHz: number[]
  trace: (name: string) => Trace
}

const simulation = new Simulation()
const started = simulation.start()
let last: Promise<unknown> = started

/**
 * Runs an AC analysis on a general circuit simulator (ngspice, compiled to WebAssembly). Lines are SPICE elements;
 * `save` names voltages and currents of sources. Runs queue up: there is one simulator.
 */
export function runAc(lines: readonly string[], save: readonly string[], sweep: string): Promise<AcRun> {
  const run = last.then(async () => {
    simulation.setNetList(['case', ...lines, `.ac ${sweep}`, `.save ${save.join(' ')}`, '.end'].join('\n'))
    const result = await simulation.runSim()
    if (result.dataType !== 'complex') throw new Error(`no AC data: ${simulation.getError().join('; ')}`)
    const named = new Map(result.data.map((row) => [row.name.toLowerCase(), row.values]))
    const trace = (name: string): Trace => {
      const values = named.get(name.toLowerCase())
      if (values === undefined)
        throw new Error(`the simulator saved no ${name}, only ${[...named.keys()].join(', ')}`)
      return values
    }
    return { frequencyHz: trace('frequency').map((value) => value.real), trace }
  })
  last = run.catch(() => undefined)
  return run
}

export const modulus = ({ real, img }: ComplexNumber): number => Math.hypot(real, img)
export const phaseDeg = ({ real, img }: ComplexNumber): number => (Math.atan2(img, real) * 180) / Math.PI
