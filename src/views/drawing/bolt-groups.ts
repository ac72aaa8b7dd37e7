import type { Hole, Panel } from '../../schema/panel.ts'
import type { Circle } from './drawing.ts'
import { diameterSaid } from './figures.ts'
import { circle } from './shapes.ts'

/** The screw holes around one hole. */
export interface BoltGroup {
  around: Hole
  bolts: readonly Hole[]
  circleMm: number
}

/** Screw holes with the hole they are nearest to, which is the one whose flange they hold. */
export function boltGroups(holes: readonly Hole[]): BoltGroup[] {
  const openings = holes.filter(({ kind }) => kind !== 'bolt')
  const away = (one: Hole, other: Hole) => Math.hypot(one.xMm - other.xMm, one.yMm - other.yMm)
  const nearest = (bolt: Hole) =>
    openings.reduce((best, hole) => (away(bolt, hole) < away(bolt, best) ? hole : best), openings[0] ?? bolt)
  const groups = new Map<Hole, Hole[]>()
  for (const bolt of holes.filter(({ kind }) => kind === 'bolt')) {
    const around = openings.find(({ id }) => bolt.id.startsWith(`${id} screw `)) ?? nearest(bolt)
    groups.set(around, [...(groups.get(around) ?? []), bolt])
  }
  return [...groups].map(([around, bolts]) => ({
    around,
    bolts,
    circleMm: (2 * bolts.reduce((sum, bolt) => sum + away(bolt, around), 0)) / bolts.length,
  }))
}

export const boltsSaid = ({ bolts, circleMm }: BoltGroup): string =>
  `${bolts.length} × ${diameterSaid(bolts[0]?.diameterMm ?? 0)} on ${diameterSaid(circleMm)}`

/** The circles that screws lie on, at the size of the panel. */
export const boltCircles = ({ holes }: Panel): Circle[] =>
  boltGroups(holes).map(({ around, circleMm }) => circle('centre', around, circleMm / 2))
