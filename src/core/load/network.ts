import type { Wiring } from '../../schema/wiring.ts'
import type { ComplexCurve } from '../complex-curve.ts'
import type { Part } from './wiring-parts.ts'

/** One driver of the wiring with the voltage across it over the voltage at the terminals. */
export interface DriverPlace extends ComplexCurve {
  driver: string
}

/** The whole network: its impedance (ohm) and what each driver gets, in the order of the wiring. */
export interface Network extends ComplexCurve {
  places: DriverPlace[]
}

/**
 * Loss of a coil or capacitor as a share of its reactance. A Q of a million is inaudible and unmeasurable, but it
 * keeps the resonance of two ideal parts finite.
 */
const IDEAL_PART_LOSS = 1e-6

interface Node extends ComplexCurve {
  joint: 'series' | 'parallel' | 'part'
  driver: string | undefined
  branches: Node[]
}

/**
 * Impedance of a tree of series and parallel parts, and the voltage that reaches each driver.
 * Kirchhoff's laws: impedances add in series, admittances in parallel.
 * @param wiring       the tree; every driver id in it must be a key of `impedances`
 * @param impedances   impedance of each kind of driver, ohm, on the grid; real part above 0
 * @param frequencyHz  the grid, Hz, above 0
 * @param leadOhm      resistance in series with the whole, ohm (≥ 0)
 */
export function solveNetwork(
  wiring: Wiring,
  impedances: ReadonlyMap<string, ComplexCurve>,
  frequencyHz: Float64Array,
  leadOhm = 0,
): Network {
  const root = build(wiring, impedances, frequencyHz)
  const { re, im } = withLead(root, leadOhm)
  const gain = curve(frequencyHz.length)
  for (let i = 0; i < frequencyHz.length; i++) {
    const inverse = 1 / (re[i]! * re[i]! + im[i]! * im[i]!)
    gain.re[i] = (root.re[i]! * re[i]! + root.im[i]! * im[i]!) * inverse
    gain.im[i] = root.im[i]! * leadOhm * inverse
  }
  const places: DriverPlace[] = []
  spread(root, gain, places)
  return { re, im, places }
}

/** Impedance of a tree alone, ohm on the grid: what `solveNetwork` gives, without what each driver gets. */
export function networkImpedance(
  wiring: Wiring,
  impedances: ReadonlyMap<string, ComplexCurve>,
  frequencyHz: Float64Array,
  leadOhm = 0,
): ComplexCurve {
  return withLead(build(wiring, impedances, frequencyHz), leadOhm)
}

function withLead({ re, im }: ComplexCurve, leadOhm: number): ComplexCurve {
  return { re: leadOhm === 0 ? re : re.map((value) => value + leadOhm), im }
}

const curve = (points: number): ComplexCurve => ({
  re: new Float64Array(points),
  im: new Float64Array(points),
})

function build(
  wiring: Wiring,
  impedances: ReadonlyMap<string, ComplexCurve>,
  frequencyHz: Float64Array,
): Node {
  if (typeof wiring === 'string') {
    const known = impedances.get(wiring)
    if (known === undefined) throw new Error(`no impedance was handed in for the driver ${wiring}`)
    return { re: known.re, im: known.im, joint: 'part', driver: wiring, branches: [] }
  }
  if ('series' in wiring) {
    const branches = wiring.series.map((branch) => build(branch, impedances, frequencyHz))
    const total = curve(frequencyHz.length)
    for (const branch of branches) add(branch, total)
    return { joint: 'series', driver: undefined, branches, ...total }
  }
  if ('parallel' in wiring) {
    const branches = wiring.parallel.map((branch) => build(branch, impedances, frequencyHz))
    const total = curve(frequencyHz.length)
    for (const branch of branches) addInverse(branch, total)
    invert(total)
    return { joint: 'parallel', driver: undefined, branches, ...total }
  }
  return { joint: 'part', driver: undefined, branches: [], ...componentImpedance(wiring, frequencyHz) }
}

/** Impedance of a resistor, a coil with its resistance or a capacitor, ohm on the grid. */
export function componentImpedance(
  part: Exclude<Part['part'], string>,
  frequencyHz: Float64Array,
): ComplexCurve {
  const n = frequencyHz.length
  const { re, im } = curve(n)
  if ('resistorOhm' in part) return { re: re.fill(part.resistorOhm), im }
  const resistance = 'inductorMh' in part ? (part.resistanceOhm ?? 0) : 0
  for (let i = 0; i < n; i++) {
    const omega = 2 * Math.PI * frequencyHz[i]!
    const reactance =
      'inductorMh' in part ? omega * part.inductorMh * 1e-3 : -1 / (omega * part.capacitorUf * 1e-6)
    re[i] = resistance + IDEAL_PART_LOSS * Math.abs(reactance)
    im[i] = reactance
  }
  return { re, im }
}

function add({ re, im }: ComplexCurve, total: ComplexCurve): void {
  for (let i = 0; i < re.length; i++) {
    total.re[i] = total.re[i]! + re[i]!
    total.im[i] = total.im[i]! + im[i]!
  }
}

function addInverse({ re, im }: ComplexCurve, total: ComplexCurve): void {
  for (let i = 0; i < re.length; i++) {
    const inverse = 1 / (re[i]! * re[i]! + im[i]! * im[i]!)
    total.re[i] = total.re[i]! + re[i]! * inverse
    total.im[i] = total.im[i]! - im[i]! * inverse
  }
}

function invert({ re, im }: ComplexCurve): void {
  for (let i = 0; i < re.length; i++) {
    const inverse = 1 / (re[i]! * re[i]! + im[i]! * im[i]!)
    re[i] = re[i]! * inverse
    im[i] = -im[i]! * inverse
  }
}

/** Hands the voltage across a node down to the drivers in it. */
function spread(node: Node, gain: ComplexCurve, places: DriverPlace[]): void {
  if (node.driver !== undefined) places.push({ driver: node.driver, re: gain.re, im: gain.im })
  for (const branch of node.branches) {
    spread(branch, node.joint === 'series' ? divided(gain, branch, node) : gain, places)
  }
}

/** Voltage divider: gain times the impedance of the branch over that of the series. */
function divided(gain: ComplexCurve, branch: ComplexCurve, whole: ComplexCurve): ComplexCurve {
  const n = gain.re.length
  const result = curve(n)
  for (let i = 0; i < n; i++) {
    const wholeRe = whole.re[i]!
    const wholeIm = whole.im[i]!
    const branchRe = branch.re[i]!
    const branchIm = branch.im[i]!
    const inverse = 1 / (wholeRe * wholeRe + wholeIm * wholeIm)
    const partRe = (branchRe * wholeRe + branchIm * wholeIm) * inverse
    const partIm = (branchIm * wholeRe - branchRe * wholeIm) * inverse
    result.re[i] = gain.re[i]! * partRe - gain.im[i]! * partIm
    result.im[i] = gain.re[i]! * partIm + gain.im[i]! * partRe
  }
  return result
}
