import { describe, expect, it } from 'vitest'
import {
  type Carcass,
  gluedEdgesMm,
  type Joint,
  jointPanels,
  type RunsThrough,
} from '../../../src/core/shop/joint-panels.ts'
import { outerFromVolume } from '../../../src/core/shop/outer-from-volume.ts'
import type { Sides } from '../../../src/schema/box.ts'
import { checks, expectWithin } from '../../outside/checks.ts'

const FILE = 'shop-checks.json'
const rows = (prefix: string) => checks(FILE, 'box').filter(({ id }) => id.startsWith(prefix))
const sides = ([widthMm, heightMm, depthMm]: number[]): Sides => ({
  widthMm: widthMm!,
  heightMm: heightMm!,
  depthMm: depthMm!,
})
const innerL = (outer: Sides, t: number) =>
  (outer.widthMm - 2 * t) * (outer.heightMm - 2 * t) * (outer.depthMm - 2 * t) * 1e-6
const outerL = (outer: Sides) => innerL(outer, 0)

const panelsL = (carcass: Carcass) =>
  jointPanels(carcass).reduce(
    (sum, { lengthMm, widthMm, count }) => sum + lengthMm * widthMm * count * carcass.thicknessMm * 1e-6,
    0,
  )

/** Wood that mitres and rebates take off one box, L: wedges along every mitred edge, corners counted once; grooves. */
function removedL({ outer, thicknessMm: t, joint, runsThrough, rebateDepthMm }: Carcass): number {
  const { widthMm: w, heightMm: h, depthMm: d } = outer
  if (joint === 'butt') return 0
  if (joint === 'rebate') return 4 * rebateDepthMm * t * d * 1e-6
  return runsThrough === 'front-back' ? (4 * t ** 2 * (w + h + d) - 8 * t ** 3) * 1e-6 : 4 * t ** 2 * d * 1e-6
}

/** Words of the reference for what the contract says with runsThrough. */
const THROUGH: Record<string, RunsThrough> = {
  'front-back': 'front-back',
  sides: 'sides',
  'top-bottom': 'top-bottom',
  'inset baffles': 'sides',
  'all edges': 'front-back',
}

describe('panels of every joint', () => {
  it.each(rows('panels-'))('$id', (check) => {
    const { outerMm, panelThicknessMm, joint, runsThrough, rebateDepthMm = 0 } = check.inputs
    const carcass = {
      outer: sides(outerMm),
      thicknessMm: panelThicknessMm,
      joint: joint as Joint,
      runsThrough: THROUGH[runsThrough]!,
      rebateDepthMm,
    }
    const panels = jointPanels(carcass)
    const { panels: expected } = check.expected
    for (const [role, length, width, count] of expected) {
      const roles = role === 'front-back' ? ['front', 'back'] : [role]
      const found = panels.filter((panel) => roles.includes(panel.role))
      expect(found.reduce((sum, panel) => sum + panel.count, 0)).toBe(count)
      for (const panel of found) expect([panel.lengthMm, panel.widthMm]).toEqual([length, width])
    }
    // What is sawn beyond the walls of the box is what the joints take off.
    const wallsL = outerL(carcass.outer) - innerL(carcass.outer, panelThicknessMm)
    expectWithin(check, 'removedByJointsMl', (panelsL(carcass) - wallsL) * 1000)
  })

  const JOINTS: Joint[] = ['butt', 'mitre', 'rebate']
  const THROUGHS: RunsThrough[] = ['front-back', 'sides', 'top-bottom']
  const all = JOINTS.flatMap((joint) => THROUGHS.map((runsThrough) => ({ joint, runsThrough }))).filter(
    ({ joint, runsThrough }) => joint !== 'rebate' || runsThrough !== 'front-back',
  )
  it.each(all)('$joint, $runsThrough: panels less what the joint removes are the walls', (choice) => {
    const carcass = { outer: sides([120, 240, 160]), thicknessMm: 12, rebateDepthMm: 6, ...choice }
    const wallsL = outerL(carcass.outer) - innerL(carcass.outer, 12)
    expect(panelsL(carcass) - removedL(carcass)).toBeCloseTo(wallsL, 9)
  })
})

it.each(rows('box-'))('$id: area and volume of the panels', (check) => {
  const { outerMm, panelThicknessMm } = check.inputs
  const panels = jointPanels({
    outer: sides(outerMm),
    thicknessMm: panelThicknessMm,
    joint: 'butt',
    runsThrough: 'front-back',
    rebateDepthMm: 0,
  })
  const areaM2 = panels.reduce(
    (sum, { lengthMm, widthMm, count }) => sum + lengthMm * widthMm * count * 1e-6,
    0,
  )
  expectWithin(check, 'panelAreaM2', areaM2)
  expectWithin(check, 'wallVolumeL', areaM2 * panelThicknessMm)
})

it.each(rows('outer-from-net'))('$id', (check) => {
  const [width, height, depth] = check.inputs['outerProportions']
  const { netVolumeL, panelThicknessMm } = check.inputs
  const outer = outerFromVolume(netVolumeL, { width, height, depth }, panelThicknessMm)
  expectWithin(check, 'outerMm', [outer.widthMm, outer.heightMm, outer.depthMm])
  expect(innerL(outer, panelThicknessMm)).toBeCloseTo(netVolumeL, 9)
})

it('the cubic has its root also for thick board and odd proportions', () => {
  for (const [volume, t] of [
    [0.02, 50],
    [1000, 1],
    [0.5, 8],
  ] as const) {
    const outer = outerFromVolume(volume, { width: 0.05, height: 20, depth: 1 }, t)
    expect(outer.widthMm).toBeGreaterThan(2 * t)
    expect(innerL(outer, t) / volume).toBeCloseTo(1, 6)
  }
})

it('glued edges of a butt box: the perimeters of the panels that butt', () => {
  const edges = gluedEdgesMm({
    outer: sides([120, 240, 160]),
    thicknessMm: 12,
    joint: 'butt',
    runsThrough: 'front-back',
    rebateDepthMm: 0,
  })
  // Sides touch front and back along 240, top and bottom touch front, back and sides along 96 and 136.
  expect(edges.reduce((sum, edge) => sum + edge, 0)).toBe(4 * 240 + 4 * 96 + 4 * 136)
})
