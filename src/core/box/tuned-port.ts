import type { PortRequest } from '../../schema/port-calculation.ts'
import type { AirState } from '../air.ts'
import type { Fault } from '../outcome.ts'
import type { Formula } from '../working.ts'
import { firstPipeResonanceHz } from './pipe-resonance.ts'
import {
  effectiveLengthMm,
  endsTotalMm,
  helmholtzHz,
  type PortGeometry,
  portGeometry,
  portShapeFaults,
} from './port-geometry.ts'

/** Tuning and length of a port on a volume: one given, the other solved. `lengthMm` is null when none reaches the tuning. */
export interface TunedPort {
  geometry: PortGeometry
  totalAreaCm2: number
  tuningHz: number
  lengthMm: number | null
  effectiveLengthMm: number
  highestTuningHz: number
}

/** Faults of a port that must have exactly one of tuning and length, below `at`. */
export function portFaults(port: Omit<PortRequest, 'netVolumeL'>, at: string): Fault[] {
  const one: Fault[] = []
  if (port.tuningHz === undefined && port.lengthMm === undefined)
    one.push({ at: `${at}/tuningHz`, message: 'give tuningHz or lengthMm; the other one is computed' })
  if (port.tuningHz !== undefined && port.lengthMm !== undefined)
    one.push({
      at: `${at}/lengthMm`,
      message: 'give tuningHz or lengthMm, not both: the other one is computed',
    })
  return [...portShapeFaults(port, at), ...one]
}

/**
 * Solves a port without faults on `netVolumeL` litres (> 0).
 * Source: Helmholtz resonance; R. H. Small, J. Audio Eng. Soc. 21 (June 1973); ends as in end-correction.ts.
 */
export function tunePort(
  port: Omit<PortRequest, 'netVolumeL'>,
  netVolumeL: number,
  air: AirState,
): TunedPort {
  const geometry = portGeometry(port)
  const totalAreaCm2 = geometry.count * geometry.areaCm2
  const ends = endsTotalMm(geometry)
  const highestTuningHz = helmholtzHz(netVolumeL, ends, totalAreaCm2, air.speedMPerS)
  const common = { geometry, totalAreaCm2, highestTuningHz }
  if (port.tuningHz === undefined) {
    const effective = (port.lengthMm ?? 0) + ends
    const tuningHz = helmholtzHz(netVolumeL, effective, totalAreaCm2, air.speedMPerS)
    return { tuningHz, lengthMm: port.lengthMm ?? 0, effectiveLengthMm: effective, ...common }
  }
  const effective = effectiveLengthMm(netVolumeL, port.tuningHz, totalAreaCm2, air.speedMPerS)
  const lengthMm = effective > ends ? effective - ends : null
  return { tuningHz: port.tuningHz, lengthMm, effectiveLengthMm: effective, ...common }
}

/** Air inside all tubes of a solved port, litres. */
export const tubeAirL = (port: TunedPort): number => port.totalAreaCm2 * (port.lengthMm ?? 0) * 1e-4

/** First pipe resonance of a solved port, Hz; null when it has no length. */
export function pipeResonanceOf(port: TunedPort, netVolumeL: number, air: AirState): number | null {
  if (port.lengthMm === null) return null
  const g = port.geometry
  return firstPipeResonanceHz(
    {
      lengthMm: port.lengthMm,
      outerEndMm: g.outerEndMm + g.neighboursOuterMm,
      innerEndMm: g.innerEndMm + g.neighboursInnerMm,
      totalAreaCm2: port.totalAreaCm2,
      netVolumeL,
    },
    air,
  )
}

/** The printed working of a solved port, with the values of `netVolumeL` and the air. */
export function portWorking(port: TunedPort, netVolumeL: number, air: AirState): Formula[] {
  const source = 'Helmholtz resonance; R. H. Small, J. Audio Eng. Soc. 21 (June 1973)'
  const ends = endsTotalMm(port.geometry)
  const c = air.speedMPerS
  const effective: Formula = {
    quantity: 'effective length of the port',
    formula: '1000 * c^2 * S * 1e-4 / ((2 * pi * fb)^2 * V * 1e-3)',
    with: { c, S: port.totalAreaCm2, fb: port.tuningHz, V: netVolumeL },
    unit: 'mm',
    source,
  }
  const tuning: Formula = {
    quantity: 'tuning of the box',
    formula: 'c / (2 * pi) * sqrt(S * 1e-4 / (V * 1e-3 * L * 1e-3))',
    with: { c, S: port.totalAreaCm2, V: netVolumeL, L: port.effectiveLengthMm },
    unit: 'Hz',
    source,
  }
  if (port.lengthMm === null) return [effective, tuning]
  const length: Formula = {
    quantity: 'length of the tube',
    formula: 'L - ends',
    with: { L: port.effectiveLengthMm, ends },
    unit: 'mm',
    source: 'end corrections as listed in the answer',
  }
  return [effective, tuning, length]
}
