import type { AirState } from '../air.ts'

/** A port as one plug of air, or a passive radiator (with compliance); all of them together. */
export interface LumpedVent {
  kind: 'lumped'
  massKgPerM4: number
  resistanceOhm: number
  complianceM3PerPa: number | null
  areaM2: number
}

/** Equal ports as pipes: `areaM2` together, `radiusM` of one. End lengths carry the air outside the pipe. */
export interface TubeVent {
  kind: 'tube'
  lengthM: number
  outerEndM: number
  innerEndM: number
  areaM2: number
  radiusM: number
  resistanceOhm: number
  viscosityM2PerS: number
}

export type Vent = LumpedVent | TubeVent

/** Inlet admittance of a vent, m³/(Pa·s), and the share of the flow that enters it which leaves it, one a frequency. */
export interface VentAdmittance {
  inletRe: Float64Array
  inletIm: Float64Array
  throughRe: Float64Array
  throughIm: Float64Array
}

// Kirchhoff's wide-tube attenuation adds heat conduction to friction: 1 + (γ − 1)/√Pr. From memory.
const HEAT_AND_FRICTION = 1 + 0.4 / Math.sqrt(0.71)

function lumpedAdmittance(vent: LumpedVent, frequencyHz: Float64Array, out: VentAdmittance): void {
  const { massKgPerM4, resistanceOhm } = vent
  const elastance = vent.complianceM3PerPa === null ? 0 : 1 / vent.complianceM3PerPa
  const { inletRe, inletIm } = out
  for (let i = 0; i < frequencyHz.length; i++) {
    const w = 2 * Math.PI * frequencyHz[i]!
    const x = w * massKgPerM4 - elastance / w
    const m = 1 / (resistanceOhm * resistanceOhm + x * x)
    inletRe[i] = resistanceOhm * m
    inletIm[i] = -x * m
  }
}

function tubeAdmittance(
  vent: TubeVent,
  around: Surroundings,
  frequencyHz: Float64Array,
  out: VentAdmittance,
): void {
  const { speedMPerS: c, densityKgPerM3: rho } = around.air
  const { lengthM, areaM2, resistanceOhm } = vent
  const { inletRe, inletIm, throughRe, throughIm } = out
  const zc = (rho * c) / areaM2
  const innerMass = (rho * vent.innerEndM) / areaM2
  const outerMass = (rho * vent.outerEndM) / areaM2
  const lossRoot = (Math.sqrt(2 * vent.viscosityM2PerS) / vent.radiusM) * 0.5 * HEAT_AND_FRICTION
  const radiation = rho / (around.solidAngle * c)
  for (let i = 0; i < frequencyHz.length; i++) {
    const w = 2 * Math.PI * frequencyHz[i]!
    const k = w / c
    const loss = lossRoot / Math.sqrt(w)
    // cos and sin of (a − jb), a the phase along the pipe, b its attenuation
    const a = k * (1 + loss) * lengthM
    const e = Math.exp(k * loss * lengthM)
    const cosh = 0.5 * (e + 1 / e)
    const sinh = 0.5 * (e - 1 / e)
    const cosA = Math.cos(a)
    const sinA = Math.sin(a)
    const cosRe = cosA * cosh
    const cosIm = sinA * sinh
    const sinRe = sinA * cosh
    const sinIm = -cosA * sinh
    const loadRe = radiation * w * w
    const loadIm = w * outerMass
    const denRe = zc * cosRe - loadRe * sinIm - loadIm * sinRe
    const denIm = zc * cosIm + loadRe * sinRe - loadIm * sinIm
    const numRe = loadRe * cosRe - loadIm * cosIm - zc * sinIm
    const numIm = loadRe * cosIm + loadIm * cosRe + zc * sinRe
    const scale = zc / (denRe * denRe + denIm * denIm)
    const tRe = denRe * scale
    const tIm = -denIm * scale
    const zRe = resistanceOhm + numRe * tRe - numIm * tIm
    const zIm = w * innerMass + numRe * tIm + numIm * tRe
    const m = 1 / (zRe * zRe + zIm * zIm)
    inletRe[i] = zRe * m
    inletIm[i] = -zIm * m
    throughRe[i] = tRe
    throughIm[i] = tIm
  }
}

/** What a vent opens into: the air, and the solid angle it radiates into. */
export interface Surroundings {
  air: AirState
  solidAngle: number
}

/**
 * A vent over a grid of frequencies (> 0, Hz); `null`, no vent, has admittance 0.
 * Source: acoustic mass and compliance, R. H. Small 1973 and 1974, from memory; a pipe as a plane-wave line with end
 * masses, L. L. Beranek & T. Mellow, Acoustics (2012), from memory; its wall losses after Kirchhoff, from memory.
 */
export function ventAdmittance(
  vent: Vent | null,
  around: Surroundings,
  frequencyHz: Float64Array,
): VentAdmittance {
  const array = () => new Float64Array(frequencyHz.length)
  const out = { inletRe: array(), inletIm: array(), throughRe: array().fill(1), throughIm: array() }
  if (vent?.kind === 'lumped') lumpedAdmittance(vent, frequencyHz, out)
  if (vent?.kind === 'tube') tubeAdmittance(vent, around, frequencyHz, out)
  return out
}
