import { decibel, hertz, litre, mm } from '../../core/say.ts'
import type { BoxTuningRequest } from '../../schema/box-tuning.ts'
import type { BoxTuningSections } from '../../schema/box-tuning-sections.ts'

const ENDS = {
  excursion: 'the travel of the cone',
  voltage: 'the drive voltage',
  power: 'the rated power of the driver',
  'air-speed': 'the air speed in the port',
  radiator: 'the travel of the passive radiator',
} satisfies Record<BoxTuningSections['limits']['limitedBy'], string>

function resonance({ tuning, port }: BoxTuningSections): string {
  if (tuning.fcHz !== undefined)
    return `resonates at ${hertz(tuning.fcHz)} with a total Q (Qtc) of ${(tuning.qtc ?? 0).toFixed(2)}`
  const length =
    port?.lengthMm === undefined || port.lengthMm === null ? '' : ` with a port of ${mm(port.lengthMm)}`
  return `is tuned to ${hertz(tuning.fbHz ?? 0)}${length}`
}

/** The sentence of `/v1/box-tuning`. */
export function boxTuningAnswer(sections: BoxTuningSections, request: BoxTuningRequest): string {
  const { tuning, limits } = sections
  const reach = tuning.f3Hz === null ? 'plays every note' : `plays down to ${hertz(tuning.f3Hz)}`
  const box = request.box.kind === 'passive-radiator' ? 'passive-radiator' : request.box.kind
  return `This ${box} box of ${litre(tuning.netVolumeL)} ${resonance(sections)} and ${reach}. It reaches ${decibel(limits.maximumSplDb)} at 1 m, where ${ENDS[limits.limitedBy]} ends it.`
}
