import { groupOf, type Loudspeaker, loudspeaker, type Opening } from '../../src/core/box/loudspeaker.ts'
import { completeDriver } from '../../src/core/driver/complete.ts'
import type { Check } from './checks.ts'

const q = (value: number | undefined): number | null => value ?? null

function openingOf(box: Check['inputs']): Opening {
  if (box['kind'] === 'closed') return null
  if (box['kind'] === 'passive-radiator')
    return {
      kind: 'radiator',
      radiator: {
        fsHz: box['radiatorFpHz'],
        qms: box['radiatorQmp'],
        vasL: box['radiatorVapL'],
        sdCm2: box['radiatorSdCm2'],
      },
    }
  const totalAreaCm2 = box['portAreaCm2'] ?? 5
  const geometry = {
    count: 1,
    shape: 'round',
    areaCm2: totalAreaCm2,
    radiusMm: 10,
    diameterMm: 20,
    outerEndMm: 0,
    innerEndMm: 0,
    neighboursOuterMm: 0,
    neighboursInnerMm: 0,
  } as const
  const tuningHz = box['tuningHz']
  return {
    kind: 'port',
    model: 'lumped',
    port: {
      geometry,
      totalAreaCm2,
      tuningHz,
      lengthMm: null,
      effectiveLengthMm: 0,
      highestTuningHz: tuningHz,
    },
  }
}

/** Builds the loudspeaker that a row of the circuit checks describes; losses missing there are none. */
export function loudspeakerOf({ inputs }: Check, wiring: 'parallel' | 'series' = 'parallel'): Loudspeaker {
  const completed = completeDriver(inputs['driver'], '/driver')
  if ('faults' in completed) throw new Error(JSON.stringify(completed.faults))
  const { box } = inputs
  const build = (leakageQ: number | null, absorptionQ: number | null) =>
    loudspeaker({
      driver: completed.driver,
      group: groupOf(inputs['count'] ?? inputs['driverCount'] ?? 1, inputs['driverWiring'] ?? wiring),
      netVolumeL: box.netVolumeL,
      losses: { leakageQ, absorptionQ, portQ: q(box.portQ), liningGain: 1 },
      opening: openingOf(box),
      air: { speedMPerS: inputs['air'].speedOfSoundMPerS, densityKgPerM3: inputs['air'].airDensityKgPerM3 },
      sourceResistanceOhm: inputs['drive'].sourceResistanceOhm,
      solidAngle: 2 * Math.PI,
      extraMassKg: 0,
    })
  const plain = build(q(box.leakageQ), q(box.absorptionQ))
  if (box.lossReferenceHz === undefined) return plain
  // The row states its losses at a frequency of its own; ours stand at the box resonance.
  const shift = plain.boxHz / box.lossReferenceHz
  return build(
    box.leakageQ === undefined ? null : box.leakageQ * shift,
    box.absorptionQ === undefined ? null : box.absorptionQ / shift,
  )
}
