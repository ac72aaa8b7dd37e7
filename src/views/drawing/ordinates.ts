import type { Shape } from './drawing.ts'
import { figure } from './figures.ts'
import { at, line, TYPE_MM, text } from './shapes.ts'

/** One distance from the lower left corner. */
export interface Ordinate {
  /** Where it lies on the paper. */
  placeMm: number
  valueMm: number
}

/** Least distance between two figures that stand one above the other. */
const STEP_MM = TYPE_MM + 0.6
/** The leader runs straight, then aside to where its figure has room. */
const STRAIGHT_MM = 2
const LEADER_MM = 6

/** Equal distances once, from the nearest to the farthest. */
export function distinct(ordinates: readonly Ordinate[]): Ordinate[] {
  const sorted = [...ordinates].sort((a, b) => a.valueMm - b.valueMm)
  return sorted.filter((one, index) => {
    const before = sorted[index - 1]
    return before === undefined || figure(before.valueMm) !== figure(one.valueMm)
  })
}

/** Places as near as may be to the wanted ones, a step apart: pushed up, then back down around the middle. */
export function spread(wantedMm: readonly number[], stepMm = STEP_MM): number[] {
  const up: number[] = []
  for (const wanted of wantedMm) up.push(Math.max(wanted, (up.at(-1) ?? -Infinity) + stepMm))
  const down: number[] = []
  for (const wanted of [...wantedMm].reverse()) down.unshift(Math.min(wanted, (down[0] ?? Infinity) - stepMm))
  return up.map((place, index) => (place + down[index]!) / 2)
}

/** Distances from the lower edge, written left of a thing whose left edge is given. */
export function ordinatesAtLeft(ordinates: readonly Ordinate[], edgeMm: number): Shape[] {
  const rows = distinct(ordinates)
  const places = spread(rows.map(({ placeMm }) => placeMm))
  return rows.flatMap(({ placeMm, valueMm }, index) => {
    const y = places[index]!
    const [near, far] = [edgeMm - STRAIGHT_MM, edgeMm - LEADER_MM]
    return [
      line('dimension', at(edgeMm - 0.6, placeMm), at(near, placeMm)),
      line('dimension', at(near, placeMm), at(far, y)),
      text(at(far - 0.8, y - 1), figure(valueMm), { anchor: 'end' }),
    ]
  })
}

/** Distances from the left edge, written below a thing whose lower edge is given and read from the right. */
export function ordinatesBelow(ordinates: readonly Ordinate[], edgeMm: number): Shape[] {
  const rows = distinct(ordinates)
  const places = spread(rows.map(({ placeMm }) => placeMm))
  return rows.flatMap(({ placeMm, valueMm }, index) => {
    const x = places[index]!
    const [near, far] = [edgeMm - STRAIGHT_MM, edgeMm - LEADER_MM]
    return [
      line('dimension', at(placeMm, edgeMm - 0.6), at(placeMm, near)),
      line('dimension', at(placeMm, near), at(x, far)),
      text(at(x + 1, far - 0.8), figure(valueMm), { anchor: 'end', angleDeg: 90 }),
    ]
  })
}
