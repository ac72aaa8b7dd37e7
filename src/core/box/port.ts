import type { Assumption } from '../../schema/frame.ts'
import type { PortRequest, PortSections } from '../../schema/port-calculation.ts'
import { type AirState, airOf } from '../air.ts'
import { portRules } from '../findings/port.ts'
import { apply } from '../findings/rule.ts'
import type { Fault, Outcome, Refusal } from '../outcome.ts'
import type { Formula } from '../working.ts'
import { elbowRadiusMm, straightMm } from './elbows.ts'
import { endsOf } from './end-correction.ts'
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
    return { ...common, tuningHz, lengthMm: port.lengthMm ?? 0, effectiveLengthMm: effective }
  }
  const effective = effectiveLengthMm(netVolumeL, port.tuningHz, totalAreaCm2, air.speedMPerS)
  const lengthMm = effective > ends ? effective - ends : null
  return { ...common, tuningHz: port.tuningHz, lengthMm, effectiveLengthMm: effective }
}

/** Air inside all tubes of a solved port, litres. */
export const tubeAirL = (port: TunedPort): number => port.totalAreaCm2 * (port.lengthMm ?? 0) * 1e-4

/** What was filled in of a port; `at` is the pointer to it. */
export function portAssumptions(
  port: Omit<PortRequest, 'netVolumeL'>,
  solved: TunedPort,
  at: string,
): Assumption[] {
  const ends = endsOf(port.ends)
  const rows: (Assumption & { given: boolean })[] = [
    {
      given: port.ends?.outer !== undefined,
      at: `${at}/ends/outer`,
      value: ends.outer,
      unit: '',
      why: 'a port usually starts flush in a panel',
    },
    {
      given: port.ends?.inner !== undefined,
      at: `${at}/ends/inner`,
      value: ends.inner,
      unit: '',
      why: 'and ends free inside the box',
    },
    {
      given: port.spacingMm !== undefined || solved.geometry.count === 1,
      at: `${at}/spacingMm`,
      value: 4 * solved.geometry.radiusMm,
      unit: 'mm',
      why: 'ports two diameters apart, on the corners of a regular polygon',
    },
    {
      given: port.elbows === undefined || port.elbows.radiusMm !== undefined,
      at: `${at}/elbows/radiusMm`,
      value: elbowRadiusMm(port),
      unit: 'mm',
      why: 'one and a half inner diameters, the usual bend; common practice, no source',
    },
  ]
  return rows.flatMap(({ given, ...row }) => (given ? [] : [row]))
}

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

const SOURCES = {
  round: { flanged: 'Rayleigh, 8/(3π) radii', free: 'Levine & Schwinger 1948, 0.6133 radii' },
  slot: {
    flanged: 'uniform velocity over the rectangle, derived',
    free: 'flush slot scaled as a round end, no source',
  },
}

function endCorrections(port: PortRequest, g: PortGeometry): PortSections['endCorrections'] {
  const ends = endsOf(port.ends)
  const neighbours = [
    {
      end: 'neighbouring ports, outer ends',
      lengthMm: g.neighboursOuterMm,
      source: 'near field of point sources, derived',
    },
    {
      end: 'neighbouring ports, inner ends',
      lengthMm: g.neighboursInnerMm,
      source: 'near field of point sources, derived',
    },
  ]
  return [
    { end: `outer end, ${ends.outer}`, lengthMm: g.outerEndMm, source: SOURCES[g.shape][ends.outer] },
    { end: `inner end, ${ends.inner}`, lengthMm: g.innerEndMm, source: SOURCES[g.shape][ends.inner] },
    ...(g.count > 1 ? neighbours : []),
  ]
}

function alternatives(request: PortRequest, solved: TunedPort, air: AirState): PortSections['alternatives'] {
  return (request.tubes ?? []).map((tube) => {
    const count = request.count ?? 1
    const same = tunePort(
      {
        count,
        innerDiameterMm: tube.innerDiameterMm,
        tuningHz: solved.tuningHz,
        ...(request.ends && { ends: request.ends }),
      },
      request.netVolumeL,
      air,
    )
    const yields = tube.lengthMm === undefined || (same.lengthMm ?? 0) * count <= tube.lengthMm
    return {
      innerDiameterMm: tube.innerDiameterMm,
      count,
      lengthMm: same.lengthMm,
      longEnough: same.lengthMm !== null && yields,
    }
  })
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

/**
 * `/v1/port`: the length that tunes a box, or the tuning that a length gives, every end correction named.
 * Refuses a port without shape, or with neither or both of tuning and length.
 */
export function port(request: PortRequest): Outcome<PortSections> | Refusal {
  const faults = portFaults(request, '')
  if (faults.length > 0) return { faults }
  const air = airOf(request.air)
  const solved = tunePort(request, request.netVolumeL, air)
  const pipeResonanceHz = pipeResonanceOf(solved, request.netVolumeL, air)
  const facts = {
    at: '',
    tuningHz: solved.tuningHz,
    lengthMm: solved.lengthMm,
    highestTuningHz: solved.highestTuningHz,
    pipeResonanceHz,
    panelThicknessMm: null,
    insideDepthMm: null,
    diameterMm: solved.geometry.diameterMm,
    reachMm: solved.lengthMm ?? 0,
    straightMm: straightMm(request, solved.lengthMm ?? 0),
    netVolumeL: request.netVolumeL,
    tubeAirL: tubeAirL(solved),
  }
  return {
    sections: {
      port: {
        tuningHz: solved.tuningHz,
        lengthMm: solved.lengthMm,
        straightMm: solved.lengthMm === null ? null : straightMm(request, solved.lengthMm),
        effectiveLengthMm: solved.effectiveLengthMm,
        areaCm2: solved.totalAreaCm2,
        equivalentDiameterMm: 2 * solved.geometry.radiusMm,
        pipeResonanceHz,
        highestTuningHz: solved.highestTuningHz,
      },
      endCorrections: endCorrections(request, solved.geometry),
      alternatives: alternatives(request, solved, air),
    },
    findings: apply(portRules, facts),
    assumptions: portAssumptions(request, solved, ''),
    cautions: [],
    working: portWorking(solved, request.netVolumeL, air),
  }
}
