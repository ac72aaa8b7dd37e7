import type { Box } from '../../schema/box.ts'
import type { PatchStep } from '../../schema/frame.ts'
import type { PassiveRadiator, Port } from '../../schema/port.ts'
import { put, takeOut } from './remedy.ts'

interface OpenBox {
  box: Box
  port: Port | undefined
  passiveRadiator: PassiveRadiator | undefined
}

/** A hole that the maker placed for the opening goes with it, by hand. */
const OPENINGS = /^(port|radiator)\b/

/** Steps that make the same box a closed one; null where it is closed already, or a hole is placed for its opening. */
export function closing({ box, port, passiveRadiator }: OpenBox): PatchStep[] | null {
  if (box.kind === 'closed' || box.holes?.some((hole) => OPENINGS.test(hole.for)) === true) return null
  return [
    put('/box/kind', 'closed'),
    ...(port === undefined ? [] : [takeOut('/port')]),
    ...(passiveRadiator === undefined ? [] : [takeOut('/passiveRadiator')]),
    ...(box.portQ === undefined ? [] : [takeOut('/box/portQ')]),
  ]
}
