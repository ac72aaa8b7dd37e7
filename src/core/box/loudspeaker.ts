import type { PassiveRadiator } from '../../schema/port.ts'
import { type AirState, kinematicViscosityM2PerS, REFERENCE_AIR } from '../air.ts'
import type { CompleteDriver } from '../driver/complete.ts'
import type { Circuit } from './circuit.ts'
import { type BoxLosses, boxCompliance } from './losses.ts'
import type { TunedPort } from './tuned-port.ts'
import type { Vent } from './vent.ts'

/** What a network of components does to a channel on a grid: driver over channel voltage, and the whole impedance. */
export interface ChannelFeed {
  transferRe: Float64Array
  transferIm: Float64Array
  /** Highest modulus any driver gets over the modulus of the mean: 1 when all get the same. */
  unevenness: Float64Array
  impedanceRe: Float64Array
  impedanceIm: Float64Array
}

/** Equal drivers of one box and how the channel's voltage reaches each. */
export interface DriverGroup {
  count: number
  /** Driver voltage over channel voltage: 1 in parallel, 1/n in series. */
  voltageShare: number
  /** Impedance of the group over that of one driver: 1/n in parallel, n in series. */
  impedanceFactor: number
  /** Replaces the two numbers above where components or other drivers make them depend on frequency. */
  feed?: (frequencyHz: Float64Array, driverRe: Float64Array, driverIm: Float64Array) => ChannelFeed
}

/** The groups that a whole channel of equal drivers can be. */
export const groupOf = (count: number, wiring: 'parallel' | 'series'): DriverGroup =>
  wiring === 'parallel'
    ? { count, voltageShare: 1, impedanceFactor: 1 / count }
    : { count, voltageShare: 1 / count, impedanceFactor: count }

/** A closed box: `null`; a port with its solved length; or a passive radiator. */
export type Opening =
  | { kind: 'port'; port: TunedPort; model: 'tube' | 'lumped' }
  | { kind: 'radiator'; radiator: PassiveRadiator }
  | null

/** A loudspeaker ready to be solved, with the figures its circuit was made from. */
export interface Loudspeaker {
  driver: CompleteDriver
  group: DriverGroup
  /** Geometric and acoustic (lining included) volume of the box, litres. */
  netVolumeL: number
  acousticVolumeL: number
  losses: BoxLosses
  opening: Opening
  air: AirState
  /** Box resonance: fb of a vented or passive-radiator box, fc of a closed one, Hz. */
  boxHz: number
  alpha: number
  circuit: Circuit
}

/** Acoustic mass, compliance and resistance of all radiators together, at reference air. */
export function radiatorAcoustics(radiator: PassiveRadiator): {
  mass: number
  compliance: number
  resistance: number
} {
  const count = radiator.count ?? 1
  const w = 2 * Math.PI * radiator.fsHz
  const compliance =
    (count * radiator.vasL * 1e-3) / (REFERENCE_AIR.densityKgPerM3 * REFERENCE_AIR.speedMPerS ** 2)
  const mass = 1 / (w * w * compliance)
  const added = ((radiator.addedMassG ?? 0) * 1e-3) / (count * (radiator.sdCm2 * 1e-4) ** 2)
  return { mass: mass + added, compliance, resistance: (w * mass) / radiator.qms }
}

/**
 * Box resonance of a radiator on a volume, Hz: fp√(1 + δ).
 * Source: R. H. Small, J. Audio Eng. Soc. 22, 592 (1974), equations from memory.
 */
export function radiatorTuningHz(radiator: PassiveRadiator, boxM3PerPa: number): number {
  const { mass, compliance } = radiatorAcoustics(radiator)
  return Math.sqrt((1 / boxM3PerPa + 1 / compliance) / mass) / (2 * Math.PI)
}

// Friction on the tube wall moves with the weather far less than with how smooth the tube is.
export const VISCOSITY_M2_PER_S = kinematicViscosityM2PerS(20)

function ventOf(opening: Opening, boxHz: number, box: number, losses: BoxLosses): Vent | null {
  if (opening === null) return null
  const w = 2 * Math.PI * boxHz
  // portQ = 1 / (ωb Cab Rap)
  const portOhm = losses.portQ === null ? 0 : 1 / (w * box * losses.portQ)
  if (opening.kind === 'radiator') {
    const { mass, compliance, resistance } = radiatorAcoustics(opening.radiator)
    const areaM2 = (opening.radiator.count ?? 1) * opening.radiator.sdCm2 * 1e-4
    return {
      kind: 'lumped',
      massKgPerM4: mass,
      resistanceOhm: resistance,
      complianceM3PerPa: compliance,
      areaM2,
    }
  }
  const { port, model } = opening
  const areaM2 = port.totalAreaCm2 * 1e-4
  const g = port.geometry
  // A port that cannot reach its tuning has no length; its blocker says so, the curves show the tuning asked for.
  if (model === 'lumped' || port.lengthMm === null)
    return {
      kind: 'lumped',
      massKgPerM4: 1 / (w * w * box),
      resistanceOhm: portOhm,
      complianceM3PerPa: null,
      areaM2,
    }
  return {
    kind: 'tube',
    lengthM: port.lengthMm * 1e-3,
    outerEndM: (g.outerEndMm + g.neighboursOuterMm) * 1e-3,
    innerEndM: (g.innerEndMm + g.neighboursInnerMm) * 1e-3,
    areaM2,
    radiusM: g.radiusMm * 1e-3,
    resistanceOhm: portOhm,
    viscosityM2PerS: VISCOSITY_M2_PER_S,
  }
}

interface Parts {
  driver: CompleteDriver
  group: DriverGroup
  netVolumeL: number
  losses: BoxLosses
  opening: Opening
  air: AirState
  /** Resistance between the voltage source and the channel, ohm. */
  sourceResistanceOhm: number
  solidAngle: number
  /** Air that moves with each cone beyond what its free-air data hold, kg. */
  extraMassKg: number
}

/** A driver whose moving mass is raised by `extraKg`: resonance falls and both Q rise with the root of the mass. Definitions. */
function loaded(driver: CompleteDriver, extraKg: number): CompleteDriver {
  const ratio = Math.sqrt(1 + extraKg / (driver.mmsG * 1e-3))
  return {
    ...driver,
    mmsG: driver.mmsG * ratio * ratio,
    fsHz: driver.fsHz / ratio,
    qms: driver.qms * ratio,
    qes: driver.qes * ratio,
    qts: driver.qts * ratio,
  }
}

/**
 * Puts driver, box and opening together as one circuit; driver data hold at reference air, the box at `air`.
 * Losses: QL = ωb Cab Ral, QA = 1/(ωb Cab Rab), QP = 1/(ωb Cab Rap), at fb or fc.
 * Source: R. H. Small, J. Audio Eng. Soc. 20 (1972) and 21 (1973), equations from memory.
 */
export function loudspeaker(parts: Parts): Loudspeaker {
  const { group, netVolumeL, losses, opening, air } = parts
  const driver = loaded(parts.driver, parts.extraMassKg)
  const acousticVolumeL = netVolumeL * losses.liningGain
  const box = boxCompliance(acousticVolumeL, air)
  const sdM2 = driver.sdCm2 * 1e-4
  const cms = driver.cmsMmPerN * 1e-3
  const alpha = (group.count * cms * sdM2 * sdM2) / box
  const boxHz = boxResonanceHz(opening, box, driver.fsHz * Math.sqrt(1 + alpha))
  const w = 2 * Math.PI * boxHz
  return {
    driver,
    group,
    netVolumeL,
    acousticVolumeL,
    losses,
    opening,
    air,
    boxHz,
    alpha,
    circuit: {
      count: group.count,
      reOhm: driver.reOhm,
      leH: driver.leMh * 1e-3,
      leExponent: driver.leExponent,
      sourceOhm: parts.sourceResistanceOhm / group.impedanceFactor,
      blTm: driver.blTm,
      mmsKg: driver.mmsG * 1e-3,
      cmsMPerN: cms,
      rmsKgPerS: driver.rmsKgPerS,
      sdM2,
      boxM3PerPa: box,
      absorptionOhm: losses.absorptionQ === null ? 0 : 1 / (w * box * losses.absorptionQ),
      leakOhm: losses.leakageQ === null ? null : losses.leakageQ / (w * box),
      vent: ventOf(opening, boxHz, box, losses),
      air,
      solidAngle: parts.solidAngle,
    },
  }
}

function boxResonanceHz(opening: Opening, box: number, fcHz: number): number {
  if (opening === null) return fcHz
  return opening.kind === 'port' ? opening.port.tuningHz : radiatorTuningHz(opening.radiator, box)
}
