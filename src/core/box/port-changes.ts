import type { PatchStep } from '../../schema/frame.ts'
import type { Port } from '../../schema/port.ts'
import type { PortFacts } from '../findings/port-facts.ts'
import { SHORTEST_MM } from '../findings/port-remedies.ts'
import { putWithin, takeOut } from '../findings/remedy.ts'
import { isRefusal } from '../outcome.ts'
import type { Assembled, BoxInput } from './assemble.ts'
import { radiatorBodies } from './bodies.ts'
import { reachMm, straightMm } from './elbows.ts'
import { type Enclosure, enclosure } from './enclosure.ts'
import { liningGain } from './losses.ts'
import { MOST_TUBE_SHARE } from './port-geometry.ts'
import { tubeAirL } from './tuned-port.ts'

/** Which of the two figures of a port the request gives. */
export const givenOf = ({ lengthMm }: Pick<Port, 'lengthMm'>): PortFacts['given'] =>
  lengthMm === undefined ? 'tuningHz' : 'lengthMm'

/** The same box with another port, on the air that its tube then leaves; null when none is left. */
function reopened(
  { box, bodies, passiveRadiator }: BoxInput,
  { speaker }: Assembled,
  port: Port,
): Enclosure | null {
  const all = [...bodies, ...radiatorBodies(passiveRadiator)]
  const enclosed = enclosure(box, all, port, speaker.air, liningGain(box))
  return isRefusal(enclosed) ? null : enclosed
}

/** The shape of a port without its tuning or length. */
function shapeOf({ tuningHz: _, lengthMm: __, ...shape }: Port): Port {
  return shape
}

/** What the rules about ports need to say how long or how tuned it may be. */
export const adjustable = (
  input: BoxInput,
  assembled: Assembled,
): Pick<PortFacts, 'given' | 'tuningOf' | 'hasBends'> => ({
  given: givenOf(input.port ?? {}),
  tuningOf: (lengthMm) =>
    reopened(input, assembled, { ...shapeOf(input.port ?? {}), lengthMm })?.port?.tuningHz ?? null,
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
    straightMm(port, lengthMm) >= 0 &&
    reachMm(port, lengthMm, thicknessMm) - thicknessMm + solved.geometry.diameterMm <= roomMm &&
    tubeAirL(solved) <= MOST_TUBE_SHARE * enclosed.netVolumeL
  )
}

/** Whether the same port still fits when the box is full of fibre, whose wider air asks for a shorter one. */
export function fitsFilled(input: BoxInput, assembled: Assembled): boolean {
  const { port } = input
  if (port === undefined) return true
  const filled: BoxInput = { ...input, box: { ...input.box, lining: 'filled' } }
  const enclosed = reopened(filled, assembled, port)
  return enclosed !== null && fits(filled, enclosed)
}

/** Steps that tune the port to a frequency, Hz; null without a port, or where it then does not fit the box. */
export function tuningSteps(input: BoxInput, assembled: Assembled, tuningHz: number): PatchStep[] | null {
  const tuned = putWithin('/port/tuningHz', tuningHz, TUNINGS_HZ)
  if (input.port === undefined || tuned === null) return null
  const enclosed = reopened(input, assembled, { ...shapeOf(input.port), tuningHz })
  if (enclosed === null || !fits(input, enclosed)) return null
  return [...(givenOf(input.port) === 'lengthMm' ? [takeOut('/port/lengthMm')] : []), ...tuned]
}
