import type { CutListRequest, CutListSections } from '../../schema/cut-list.ts'
import { REFERENCE_AIR } from '../air.ts'
import { radiatorBodies } from '../box/bodies.ts'
import { enclosure } from '../box/enclosure.ts'
import { liningGain } from '../box/losses.ts'
import { portFaults } from '../box/tuned-port.ts'
import type { Fault, Outcome, Refusal } from '../outcome.ts'
import { isRefusal } from '../outcome.ts'
import { cutList } from '../shop/cut-list.ts'
import { withThickness } from './box-thickness.ts'

/** Length of the port of a box, mm: as given, else from its tuning on the air that drivers and tube leave. */
function portLength({
  box,
  port,
  drivers,
  passiveRadiator,
  stock,
}: CutListRequest): { lengthMm: number | null } | { faults: Fault[] } {
  if (port === undefined || box === undefined) return { lengthMm: null }
  const faults = portFaults(port, '/port')
  if (faults.length > 0) return { faults }
  if (port.lengthMm !== undefined) return { lengthMm: port.lengthMm }
  const cones = (drivers ?? []).map((driver, i) => ({
    at: `/drivers/${i}`,
    count: driver.count ?? 1,
    frame: driver.frame,
  }))
  const bodies = [...cones, ...radiatorBodies(passiveRadiator)]
  const enclosed = enclosure(withThickness(box, stock), bodies, port, REFERENCE_AIR, liningGain(box))
  return isRefusal(enclosed) ? enclosed : { lengthMm: enclosed.port?.lengthMm ?? null }
}

/**
 * `/v1/cut-list`: panels, holes and layout of a box or of plain parts; a port given by its tuning gets its length first.
 * Refuses boxes and ports that cannot be, with every fault.
 */
export function cutListInBox(request: CutListRequest): Outcome<CutListSections> | Refusal {
  const length = portLength(request)
  const outcome = cutList(request, { portLengthMm: 'faults' in length ? null : length.lengthMm })
  if (!('faults' in length)) return outcome
  const others = isRefusal(outcome) ? outcome.faults : []
  const own = length.faults.filter((fault) => !others.some((other) => other.at === fault.at))
  return { faults: [...others, ...own] }
}
