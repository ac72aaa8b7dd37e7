import { type NetlistCase, netlistOf } from './loudspeaker-netlist.ts'
import { normal } from './normal.ts'
import { runAc } from './simulator.ts'

/** What was built wrong on purpose; drivers are counted from 0. */
export type Planted =
  | { kind: 'reversed'; driver: number }
  | { kind: 'open'; driver: number }
  | { kind: 'shorted'; driver: number; between: [string, string] }

/** An impedance over frequency as an instrument at the terminals would read it. */
export interface Reading {
  frequencyHz: number[]
  ohm: number[]
  phaseDeg: number[]
}

/** A coil connected backwards pushes the other way and is pushed back the other way. */
const backwards = (line: string): string => {
  const words = line.split(' ')
  return [...words.slice(0, -1), String(-Number(words.at(-1)))].join(' ')
}

function withFault(lines: readonly string[], planted: Planted | null): string[] {
  if (planted === null) return [...lines]
  const i = planted.driver
  if (planted.kind === 'reversed')
    return lines.map((line) => (new RegExp(`^H(back|force)${i} `).test(line) ? backwards(line) : line))
  if (planted.kind === 'open')
    return lines.map((line) => (line.startsWith(`Re${i} `) ? line.replace(/\S+$/, '1e12') : line))
  return [...lines, `Rshort ${planted.between.join(' ')} 1e-6`]
}

/** Impedance at the source of a box by the circuit simulator, lead included; points a decade and range in Hz. */
export async function measuredBox(
  given: NetlistCase,
  planted: Planted | null = null,
  sweep: readonly [perDecade: number, fromHz: number, toHz: number] = [50, 20, 1500],
): Promise<Reading> {
  const { frequencyHz, trace } = await runAc(
    withFault(netlistOf(given), planted),
    ['i(vin)', 'v(in)'],
    `dec ${sweep.join(' ')}`,
  )
  const current = trace('i(vin)')
  const voltage = trace('v(in)')
  // The current of a source runs into its positive end: minus V over I.
  const z = current.map(({ real, img }, i) => {
    const square = real * real + img * img
    const v = voltage[i]!
    return { re: -(v.real * real + v.img * img) / square, im: -(v.img * real - v.real * img) / square }
  })
  return {
    frequencyHz,
    ohm: z.map(({ re, im }) => Math.hypot(re, im)),
    phaseDeg: z.map(({ re, im }) => (Math.atan2(im, re) * 180) / Math.PI),
  }
}

/** Uniform numbers in (0, 1) from a seed. Mulberry32, T. Ettinger, public domain, from memory. */
function uniform(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return (((t ^ (t >>> 14)) >>> 0) + 0.5) / 4294967296
  }
}

/** The same reading with Gaussian noise: `share` of the modulus, and as many radians of phase. */
export function withNoise({ frequencyHz, ohm, phaseDeg }: Reading, share: number, seed: number): Reading {
  const next = uniform(seed)
  return {
    frequencyHz,
    ohm: ohm.map((value) => value * Math.exp(share * normal(next))),
    phaseDeg: phaseDeg.map((value) => value + (share * normal(next) * 180) / Math.PI),
  }
}
