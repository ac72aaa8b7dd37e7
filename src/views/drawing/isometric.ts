import type { Point } from './drawing.ts'
import { at } from './shapes.ts'

/** A point of the box: x to the right, y to the back, z upwards, from the middle. */
export type Corner = readonly [x: number, y: number, z: number]

/** Isometric projection, seen from the front, the right and above: the three axes 120 degrees apart. */
export const project = ([x, y, z]: Corner): Point =>
  at((x + y) * Math.cos(Math.PI / 6), z + (y - x) * Math.sin(Math.PI / 6))
