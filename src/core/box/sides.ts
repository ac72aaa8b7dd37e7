import type { Box, Sides } from '../../schema/box.ts'
import type { Fault } from '../outcome.ts'
import { mm } from '../say.ts'

/** Outer sides less two boards each; every joint leaves the same inside. */
export const innerOf = (outer: Sides, panelThicknessMm: number): Sides => ({
  widthMm: outer.widthMm - 2 * panelThicknessMm,
  heightMm: outer.heightMm - 2 * panelThicknessMm,
  depthMm: outer.depthMm - 2 * panelThicknessMm,
})

/** Inner sides plus two boards each. */
export const outerOf = (inner: Sides, panelThicknessMm: number): Sides => innerOf(inner, -panelThicknessMm)

/** Volume of a cuboid, litres. */
export const volumeL = (sides: Sides): number => sides.widthMm * sides.heightMm * sides.depthMm * 1e-6

const NAMES = ['widthMm', 'heightMm', 'depthMm'] as const

interface BoxRule {
  at: string
  broken: (box: Box) => boolean
  message: (box: Box) => string
}

const RULES: readonly BoxRule[] = [
  {
    at: '/outer',
    broken: (box) => box.outer === undefined && box.inner === undefined && box.netVolumeL === undefined,
    message: () => 'give the outer sides, the inner sides or netVolumeL',
  },
  {
    at: '/inner',
    broken: (box) => box.outer !== undefined && box.inner !== undefined,
    message: () => 'give the outer or the inner sides, not both: one follows from the other and the board',
  },
  {
    at: '/panelThicknessMm',
    broken: (box) => box.outer !== undefined && box.panelThicknessMm === undefined,
    message: () => 'outer sides need panelThicknessMm: the air inside follows from both',
  },
]

/** What is missing or contradictory in the sides of a box, below `at`; panels thicker than the box among it. */
export function sidesFaults(box: Box, at: string): Fault[] {
  const { outer, panelThicknessMm: t } = box
  const thick =
    outer === undefined || t === undefined
      ? []
      : NAMES.filter((name) => outer[name] <= 2 * t).map((name) => ({
          at: `${at}/outer/${name}`,
          message: `two panels of ${mm(t)} leave no air in ${mm(outer[name])}; more than ${mm(2 * t)} is needed`,
        }))
  return [
    ...RULES.filter((rule) => rule.broken(box)).map((rule) => ({
      at: at + rule.at,
      message: rule.message(box),
    })),
    ...thick,
  ]
}
