import { describe, expect, it } from 'vitest'
import type { Wiring } from '../../../src/schema/wiring.ts'
import type { Point, Polygon, Shape } from '../../../src/views/drawing/drawing.ts'
import { at } from '../../../src/views/drawing/shapes.ts'
import { namingOf, networkOf } from '../../../src/views/wiring/network.ts'

// The picture is read back as a circuit: wires that end in one point, or meet under a dot, are one node; between the
// nodes lie the resistors at the values written beside them. Its resistance has to be that of the tree.

const SEED = 20_250_311

/** Numbers from 0 to 1, the same for the same seed. Park and Miller 1988, from memory. */
function random(seed: number): () => number {
  let state = seed
  return () => {
    state = (state * 48_271) % 2_147_483_647
    return state / 2_147_483_647
  }
}

function anyTree(next: () => number, depth: number): Wiring {
  if (depth === 0 || next() < 0.3) return { resistorOhm: 1 + Math.floor(99 * next()) }
  const branches = Array.from({ length: 1 + Math.floor(4 * next()) }, () => anyTree(next, depth - 1))
  return next() < 0.5 ? { series: branches } : { parallel: branches }
}

/** Resistors in series add up, in parallel their inverses do. */
function ohmOf(tree: Wiring): number {
  if (typeof tree === 'string') throw new Error('no driver here')
  if ('series' in tree) return tree.series.reduce((sum, branch) => sum + ohmOf(branch), 0)
  if ('parallel' in tree) return 1 / tree.parallel.reduce((sum, branch) => sum + 1 / ohmOf(branch), 0)
  return 'resistorOhm' in tree ? tree.resistorOhm : Number.NaN
}

const near = (a: Point, b: Point): boolean => Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm) < 1e-6

const lies = (point: Point, [from, to]: readonly [Point, Point]): boolean =>
  Math.abs(
    Math.hypot(point.xMm - from.xMm, point.yMm - from.yMm) +
      Math.hypot(point.xMm - to.xMm, point.yMm - to.yMm) -
      Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm),
  ) < 1e-6

/** Resistance between two points of a drawn network, by the equations of its nodes. */
function drawnOhm(shapes: readonly Shape[], plus: Point, minus: Point): number {
  const wires = shapes.flatMap((shape) =>
    shape.kind === 'segments' && shape.role === 'hole' ? [...shape.segments] : [],
  )
  const dots = shapes.flatMap((shape) => (shape.kind === 'circle' ? [shape.at] : []))
  const group = wires.map((_, index) => index)
  const find = (index: number): number => (group[index] === index ? index : find(group[index]!))
  const joined = (a: readonly [Point, Point], b: readonly [Point, Point]) =>
    a.some((end) => b.some((other) => near(end, other))) || dots.some((dot) => lies(dot, a) && lies(dot, b))
  for (const [i, a] of wires.entries())
    for (const [j, b] of wires.entries()) if (joined(a, b)) group[find(i)] = find(j)
  const nodeAt = (point: Point): number => {
    const index = wires.findIndex((wire) => wire.some((end) => near(end, point)))
    if (index < 0) throw new Error(`no wire ends at ${point.xMm}, ${point.yMm}`)
    return find(index)
  }
  const boxes = shapes.filter((shape): shape is Polygon => shape.kind === 'polygon')
  const parts = boxes.map(({ points }) => {
    const [xs, ys] = [points.map(({ xMm }) => xMm), points.map(({ yMm }) => yMm)]
    const [x, top, foot] = [(Math.min(...xs) + Math.max(...xs)) / 2, Math.max(...ys), Math.min(...ys)]
    const label = shapes.find(
      (shape) =>
        shape.kind === 'text' &&
        Math.abs(shape.at.yMm - (top + foot) / 2) < 2 &&
        shape.at.xMm > x &&
        shape.at.xMm < x + 5,
    )
    if (label?.kind !== 'text') throw new Error('a resistor without its value')
    return { ohm: Number.parseFloat(label.text), a: nodeAt(at(x, top)), b: nodeAt(at(x, foot)) }
  })
  const [from, to] = [nodeAt(plus), nodeAt(minus)]
  const nodes = [...new Set(parts.flatMap(({ a, b }) => [a, b]))].filter((node) => node !== to)
  const between = (one: number, other: number): number =>
    parts.reduce((sum, { ohm, a, b }) => {
      const ends = [a, b]
      return a !== b && ends.includes(one) && ends.includes(other) ? sum + 1 / ohm : sum
    }, 0)
  const rows = nodes.map((node) => [
    ...nodes.map((other) => (node === other ? 1 : -1) * between(node, other)),
    node === from ? 1 : 0,
  ])
  return solved(rows)[nodes.indexOf(from)] ?? 0
}

/** Gauss with the largest pivot. */
function solved(rows: number[][]): number[] {
  const size = rows.length
  for (let column = 0; column < size; column++) {
    const pivot = rows.reduce(
      (best, row, index) =>
        index >= column && Math.abs(row[column]!) > Math.abs(rows[best]![column]!) ? index : best,
      column,
    )
    ;[rows[column], rows[pivot]] = [rows[pivot]!, rows[column]!]
    for (const [index, row] of rows.entries()) {
      if (index === column) continue
      const factor = row[column]! / rows[column]![column]!
      for (let k = column; k <= size; k++) row[k]! -= factor * rows[column]![k]!
    }
  }
  return rows.map((row, index) => row[size]! / row[index]!)
}

describe('a drawn network', () => {
  const next = random(SEED)
  const trees = Array.from({ length: 60 }, () => anyTree(next, 3))
  it(`is the circuit of its tree (seed ${SEED})`, () => {
    for (const tree of trees) {
      const part = networkOf(tree, [], namingOf([]))
      const shapes = part.drawn(at(0, 0))
      expect(drawnOhm(shapes, at(0, 0), at(0, -part.heightMm)), JSON.stringify(tree)).toBeCloseTo(
        ohmOf(tree),
        6,
      )
    }
  })

  it('keeps within the room that it says it takes', () => {
    for (const tree of trees) {
      const part = networkOf(tree, [], namingOf([]))
      const points = part.drawn(at(0, 0)).flatMap(pointsOf)
      const [xs, ys] = [points.map(({ xMm }) => xMm), points.map(({ yMm }) => yMm)]
      expect(Math.min(...xs)).toBeGreaterThanOrEqual(-part.leftMm - 1e-6)
      expect(Math.max(...xs)).toBeLessThanOrEqual(part.rightMm + 1e-6)
      expect(Math.max(...ys)).toBeLessThanOrEqual(1e-6)
      expect(Math.min(...ys)).toBeGreaterThanOrEqual(-part.heightMm - 1e-6)
    }
  })
})

const pointsOf = (shape: Shape): readonly Point[] => {
  if (shape.kind === 'polygon') return shape.points
  return shape.kind === 'segments' ? shape.segments.flat() : [shape.at]
}

it('drivers of one box are counted through its channels, as on its front panel', () => {
  const drivers = [{ id: 'main', count: 2, parameters: {} }]
  const naming = namingOf(drivers)
  expect([naming('main'), naming('main')]).toEqual(['main 1', 'main 2'])
})
