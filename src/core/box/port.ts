import type { PortRequest, PortSections } from '../../schema/port-calculation.ts'
import { type AirState, airAssumptions, airOf } from '../air.ts'
import { portRules } from '../findings/port.ts'
import type { PortFacts } from '../findings/port-facts.ts'
import { apply } from '../findings/rule.ts'
import type { Outcome, Refusal } from '../outcome.ts'
import { straightMm, straightOrNull } from './elbows.ts'
import { endsOf } from './end-correction.ts'
import { portAssumptions } from './port-assumptions.ts'
import { givenOf } from './port-changes.ts'
import type { PortGeometry } from './port-geometry.ts'
import { pipeResonanceOf, portFaults, portWorking, type TunedPort, tubeAirL, tunePort } from './tuned-port.ts'

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

/** Whether the tube on hand yields the length; null when its own length is not known. */
function longEnough(lengthMm: number | null, needMm: number, onHandMm: number | undefined): boolean | null {
  if (lengthMm === null) return false
  return onHandMm === undefined ? null : needMm <= onHandMm
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
    const needMm = (same.lengthMm ?? 0) * count
    return {
      innerDiameterMm: tube.innerDiameterMm,
      count,
      lengthMm: same.lengthMm,
      longEnough: longEnough(same.lengthMm, needMm, tube.lengthMm),
    }
  })
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
  const facts: PortFacts = {
    at: '',
    given: givenOf(request),
    tuningOf: (lengthMm: number) => {
      const { tuningHz: _, ...open } = request
      return tunePort({ ...open, lengthMm }, request.netVolumeL, air).tuningHz
    },
    hasBends: request.elbows !== undefined,
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
        straightMm: straightOrNull(request, solved.lengthMm),
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
    assumptions: [...portAssumptions(request, solved, ''), ...airAssumptions(request.air)],
    cautions: [],
    working: portWorking(solved, request.netVolumeL, air),
  }
}
