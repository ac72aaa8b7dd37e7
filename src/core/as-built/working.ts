import { endsTotalMm } from '../box/port-geometry.ts'
import type { Formula } from '../working.ts'
import { type AsBuiltFacts, wantedTubeMm } from './facts.ts'

function classicWorking({ secondOpinion }: AsBuiltFacts): Formula[] {
  const { lowerPeakHz = null, dipHz = null, upperPeakHz = null } = secondOpinion ?? {}
  if (lowerPeakHz === null || dipHz === null || upperPeakHz === null) return []
  return [
    {
      quantity: 'compliance ratio of the second opinion',
      formula: '(fH^2 - fM^2) * (fM^2 - fL^2) / (fH^2 * fL^2)',
      with: { fL: lowerPeakHz, fM: dipHz, fH: upperPeakHz },
      unit: '',
      source: 'R. H. Small, J. Audio Eng. Soc. 21 (June 1973), parameter measurement, from memory',
    },
  ]
}

function portWorking(facts: AsBuiltFacts): Formula[] {
  const { best, planned } = facts
  const { port } = planned.enclosure
  if (best === null || port === null || wantedTubeMm(facts) === null || port.lengthMm === null) return []
  return [
    {
      quantity: 'length of the port for the planned tuning on the volume as built',
      formula: '1000 * c^2 * S * 1e-4 / ((2 * pi * fb)^2 * V * 1e-3) - ends',
      with: {
        c: planned.speaker.air.speedMPerS,
        S: port.totalAreaCm2,
        fb: planned.speaker.boxHz,
        V: planned.speaker.acousticVolumeL * Math.exp(best.built.air),
        ends: endsTotalMm(port.geometry),
      },
      unit: 'mm',
      source: 'Helmholtz resonance; R. H. Small, J. Audio Eng. Soc. 21 (June 1973)',
    },
  ]
}

/** The printed working of a finished box: what can be followed by hand. */
export const asBuiltWorking = (facts: AsBuiltFacts): Formula[] => [
  ...classicWorking(facts),
  ...portWorking(facts),
]
