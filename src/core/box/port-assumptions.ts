import type { Assumption } from '../../schema/frame.ts'
import type { PortRequest } from '../../schema/port-calculation.ts'
import { elbowRadiusMm } from './elbows.ts'
import { endsOf } from './end-correction.ts'
import type { TunedPort } from './tuned-port.ts'

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
  return rows.filter(({ given }) => !given).map(({ at, value, unit, why }) => ({ at, value, unit, why }))
}
