import { hertz, mm } from '../say.ts'
import type { PortFacts } from './port-facts.ts'
import { put, putWithin, type Remedy, remedy } from './remedy.ts'
import { downToTenth, downToThree, upToTenth, upToThree } from './rounded.ts'

// Below this no small box is tuned, and above it no port is: common practice, no source.
const USEFUL_HZ = [15, 2000] as const
// The ends of the contract.
const LENGTHS_MM = [1, 3000] as const
// A bare cut-out in a thin panel is already this long.
export const SHORTEST_MM = 3

/** Least length that goes through the panel and round its own bends, mm. */
export const leastLengthMm = ({ panelThicknessMm, lengthMm, straightMm }: PortFacts): number =>
  Math.max(SHORTEST_MM, panelThicknessMm ?? 0, (lengthMm ?? 0) - straightMm)

const isUseful = (hz: number): boolean => hz >= USEFUL_HZ[0] && hz <= USEFUL_HZ[1]

/** A port of this length or more, by the figure that the request gives; nothing where no useful tuning has it. */
export function longer(facts: PortFacts, lengthMm: number): Remedy[] {
  if (facts.given === 'lengthMm') {
    const least = upToTenth(lengthMm)
    return [
      remedy(
        `Make the port at least ${mm(least)} long.`,
        putWithin(`${facts.at}/lengthMm`, least, LENGTHS_MM),
      ),
    ]
  }
  const hz = facts.tuningOf(lengthMm)
  if (hz === null || !isUseful(hz)) return []
  const most = downToThree(hz)
  return [remedy(`Ask for ${hertz(most)} or less.`, [put(`${facts.at}/tuningHz`, most)])]
}

/** A port of this length or less, likewise; nothing where that would not go through the panel. */
export function shorter(facts: PortFacts, lengthMm: number): Remedy[] {
  if (lengthMm < leastLengthMm(facts)) return []
  if (facts.given === 'lengthMm') {
    const most = downToTenth(lengthMm)
    return [
      remedy(
        `Make the port ${mm(most)} long at the most.`,
        putWithin(`${facts.at}/lengthMm`, most, LENGTHS_MM),
      ),
    ]
  }
  const hz = facts.tuningOf(lengthMm)
  if (hz === null || !isUseful(hz)) return []
  const least = upToThree(hz)
  return [remedy(`Ask for ${hertz(least)} or more.`, [put(`${facts.at}/tuningHz`, least)])]
}
