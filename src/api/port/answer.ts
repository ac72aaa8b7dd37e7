import { hertz, litre, mm } from '../../core/say.ts'
import type { PortRequest, PortSections } from '../../schema/port-calculation.ts'

/** The sentence of `/v1/port`. */
export function portAnswer({ port }: PortSections, request: PortRequest): string {
  const box = litre(request.netVolumeL)
  if (port.lengthMm === null) {
    return `No tube tunes ${box} to ${hertz(port.tuningHz)} with this opening; a mere hole gives ${hertz(port.highestTuningHz)}.`
  }
  const each =
    (request.count ?? 1) > 1
      ? `${request.count} tubes of ${mm(port.lengthMm)}`
      : `A tube of ${mm(port.lengthMm)}`
  return `${each} tune${(request.count ?? 1) > 1 ? '' : 's'} ${box} to ${hertz(port.tuningHz)}.`
}
