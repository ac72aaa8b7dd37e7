import { mm } from '../say.ts'
import type { Web } from '../shop/hole-gaps.ts'

/** Thinnest web that holds at all, mm. Common practice, no source. */
export const BREAKING_WEB_MM = 3

/** What is left between two holes, or between a hole and the edge, when it is too little to be sawn. */
export function woodLeft({ webMm, between: [one, other] }: Web): string {
  if (webMm >= 0)
    return `Only ${mm(webMm)} of wood stay between ${one} and ${other}; that breaks out when sawn.`
  return other === 'edge'
    ? `The hole of ${one} runs ${mm(-webMm)} over the edge of the panel.`
    : `The holes of ${one} and ${other} run ${mm(-webMm)} into each other.`
}
