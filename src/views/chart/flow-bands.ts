import { place } from './picture.ts'

/** A band that turns down out of the flow. */
export interface FlowBand {
  /** Where it leaves the flow. */
  from: number
  /** Middle of its way down, and its height in the flow, which is its width there. */
  middle: number
  thickness: number
  /** Lower edge of the flow where it leaves. */
  lower: number
}

interface FlowShape {
  left: number
  right: number
  top: number
  /** Height of the band of the full power. */
  fullHeight: number
  fullW: number
}

const ARROW = 12
const TURN = 14
/** The least that is still seen on paper. */
const THINNEST = 2

/** The band of what goes on, and the bands of what is lost, each taken off its lower edge in turn. */
export function flowBands(
  losses: readonly { x: number; watts: number }[],
  { left, right, top, fullHeight, fullW }: FlowShape,
): { main: string; branches: FlowBand[] } {
  const heightOf = (watts: number) => (fullW > 0 ? (fullHeight * Math.max(0, watts)) / fullW : 0)
  let lower = top + fullHeight
  const branches = losses.map(({ x, watts }) => {
    const thickness = heightOf(watts)
    const band = { from: x, middle: x + TURN + thickness / 2, thickness, lower }
    lower -= thickness
    return band
  })
  const edge = branches.flatMap(({ from, lower: at, thickness }) => [
    `L${place(from)},${place(at)}`,
    `L${place(from)},${place(at - thickness)}`,
  ])
  const tip = (top + lower) / 2
  return {
    main: `M${left},${place(top)}L${left},${place(top + fullHeight)}${edge.join('')}L${right - ARROW},${place(lower)}L${right},${place(tip)}L${right - ARROW},${place(top)}Z`,
    branches,
  }
}

/** Outline of a band that turns down to its foot and ends in a point. */
export function branch({ from, middle, thickness, lower }: FlowBand, foot: number): string {
  const half = Math.max(THINNEST, thickness) / 2
  const [inner, outer] = [middle - half, middle + half]
  const upper = lower - 2 * half
  return [
    `M${place(from)},${place(lower)}`,
    `Q${place(inner)},${place(lower)} ${place(inner)},${place(lower + TURN)}`,
    `L${place(inner)},${place(foot)}`,
    `L${place(middle)},${place(foot + Math.min(ARROW, half + 3))}`,
    `L${place(outer)},${place(foot)}`,
    `L${place(outer)},${place(lower + TURN)}`,
    `Q${place(outer)},${place(upper)} ${place(from)},${place(upper)}`,
    'Z',
  ].join('')
}
