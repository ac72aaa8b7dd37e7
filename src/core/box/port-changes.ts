import type { PatchStep } from '../../schema/frame.ts'
import type { Port } from '../../schema/port.ts'
import type { PortFacts } from '../findings/port-facts.ts'
import { SHORTEST_MM } from '../findings/port-remedies.ts'
import { putWithin, takeOut } from '../findings/remedy.ts'
import { isRefusal } from '../outcome.ts'
import type { Assembled, BoxInput } from './assemble.ts'
import { radiatorBodies } from './bodies.ts'
import { reachMm } from './elbows.ts'
import { type Enclosure, enclosure } from './enclosure.ts'
import { liningGain } from './losses.ts'
import { MOST_TUBE_SHARE } from './port-geometry.ts'
import { tubeAirL } from './tuned-port.ts'

/** Which of the two figures of a port the request gives. */
export const givenOf = ({ lengthMm }: Pick<Port, 'lengthMm'>): PortFacts['given'] =>
  lengthMm === undefined ? 'tuningHz' : 'lengthMm'

/** The same box with its port tuned or cut otherwise, on the air that the tube then leaves; null when none is left. */
function reopened(
  { box, port, bodies, passiveRadiator }: BoxInput,
  { speaker }: Assembled,
  change: Pick<Port, 'tuningHz'> | Pick<Port, 'lengthMm'>,
): Enclosure | null {
  const { tuningHz: _, lengthMm: __, ...shape } = port ?? {}
  const all = [...bodies, ...radiatorBodies(passiveRadiator)]
  const enclosed = enclosure(box, all, { ...shape, ...change }, speaker.air, liningGain(box))
  return isRefusal(enclosed) ? null : enclosed
}

/** What the rules about ports need to say how long or how tuned it may be. */
export const adjustable = (
  input: BoxInput,
  assembled: Assembled,
): Pick<PortFacts, 'given' | 'tuningOf' | 'hasBends'> => ({
  given: givenOf(input.port ?? {}),
  tuningOf: (lengthMm) => reopened(input, assembled, { lengthMm })?.port?.tuningHz ?? null,
  hasBends: input.port?.elbows !== undefined,
})

/** Tunings of ports, Hz: the ends of the contract. */
const TUNINGS_HZ = [5, 2000] as const

/** Whether the port goes through its panel, leaves a diameter free behind it and is not most of the box. */
function fits({ box, port }: BoxInput, enclosed: Enclosure): boolean {
  const solved = enclosed.port
  const lengthMm = solved?.lengthMm ?? null
  if (solved === null || lengthMm === null || port === undefined) return false
  const thicknessMm = box.panelThicknessMm ?? 0
  const roomMm = enclosed.inner?.depthMm ?? 100 * Math.cbrt(enclosed.netVolumeL)
  return (
    lengthMm >= Math.max(SHORTEST_MM, thicknessMm) &&
    reachMm(port, lengthMm, thicknessMm) - thicknessMm + solved.geometry.diameterMm <= roomMm &&
    tubeAirL(solved) <= MOST_TUBE_SHARE * enclosed.netVolumeL
  )
}

/** Steps that tune the port to a frequency, Hz; null without a port, or where it then does not fit the box. */
export function tuningSteps(input: BoxInput, assembled: Assembled, tuningHz: number): PatchStep[] | null {
  const tuned = putWithin('/port/tuningHz', tuningHz, TUNINGS_HZ)
  if (input.port === undefined || tuned === null) return null
  const enclosed = reopened(input, assembled, { tuningHz })
  if (enclosed === null || !fits(input, enclosed)) return null
  return [...(givenOf(input.port) === 'lengthMm' ? [takeOut('/port/lengthMm')] : []), ...tuned]
}
