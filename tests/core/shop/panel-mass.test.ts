import { describe, expect, it } from 'vitest'
import { isRefusal } from '../../../src/core/outcome.ts'
import { cutList } from '../../../src/core/shop/cut-list.ts'
import type { CutListRequest } from '../../../src/schema/cut-list.ts'
import { laid, panel } from './small-box.ts'

type Box = NonNullable<CutListRequest['box']>

const [W, H, D, T] = [200, 300, 250, 15]
const OUTER = { widthMm: W, heightMm: H, depthMm: D }
// Density of MDF, kg/m3: middle of the range of Wood Handbook, FPL-GTR-282, Table 12-1, from memory.
const DENSITY = 740
const kg = (volumeMm3: number) => volumeMm3 * 1e-9 * DENSITY
const stock = [{ lengthMm: 2440, widthMm: 1220, thicknessMm: T, material: 'mdf' as const }]

const made = (joint: Partial<Box>, more: Partial<CutListRequest> = {}) =>
  laid({
    box: { kind: 'closed', outer: OUTER, panelThicknessMm: T, ...joint },
    drivers: [],
    stock,
    ...more,
  })

/** The hole for the lead in the back, 8 mm wide. */
const LEAD_MM3 = (Math.PI / 4) * 8 ** 2 * T

describe('the panels of a box together weigh what lies between its outside and its inside', () => {
  it.each<[string, Partial<Box>]>([
    ['butt, front and back run through', { joint: 'butt', runsThrough: 'front-back' }],
    ['butt, sides run through', { joint: 'butt', runsThrough: 'sides' }],
    ['butt, top and bottom run through', { joint: 'butt', runsThrough: 'top-bottom' }],
    ['mitred all round', { joint: 'mitre', runsThrough: 'front-back' }],
    ['a mitred shell', { joint: 'mitre', runsThrough: 'sides' }],
    ['rebated sides', { joint: 'rebate', runsThrough: 'sides' }],
    ['rebated top and bottom', { joint: 'rebate', runsThrough: 'top-bottom', rebateDepthMm: 5 }],
  ])('%s', (_, joint) => {
    const { panels } = made(joint).sections
    const together = panels.reduce((sum, { count, massKg }) => sum + count * massKg!, 0)
    // Geometry: whatever the joint, the walls fill just this.
    const walls = W * H * D - (W - 2 * T) * (H - 2 * T) * (D - 2 * T)
    expect(together).toBeCloseTo(kg(walls - LEAD_MM3), 9)
  })
})

it('a mitred edge costs half a board thickness of width', () => {
  // A side of 300 x 250 mm, mitred at both ends, is 300 mm long outside and 270 mm inside: 285 mm in the mean.
  const side = panel(made({ joint: 'mitre', runsThrough: 'sides' }), 'side')
  expect(side?.massKg).toBeCloseTo(kg((300 - 15) * 250 * T), 9)
})

it('holes are taken off at their depth, a brace with its window, a pocket with what it is wider', () => {
  const frame = { outerDiameterMm: 130, cutoutDiameterMm: 110, depthMm: 60 }
  const bolts = { boltCircleDiameterMm: 120, boltCount: 4, flangeThicknessMm: 4 }
  const signal = { volumeControl: { resistanceKohm: 50, shaftDiameterMm: 7, bodyDiameterMm: 16 } }
  const drivers = [{ id: 'main', parameters: {}, frame: { ...frame, ...bolts } }]
  const result = made({ braces: [{ lies: 'level', openShare: 0.25 }] }, { drivers, signal })
  const front = panel(result, 'front')!
  const disc = (mm: number) => (Math.PI / 4) * mm ** 2
  const control = front.holes.find(({ kind }) => kind === 'control')!
  const screws = front.holes.filter(({ kind }) => kind === 'bolt')
  expect(screws).toHaveLength(4)
  // The body of 16 mm with 1 mm of play.
  expect(control.recess?.diameterMm).toBe(17)
  const gone =
    disc(110) * T +
    4 * disc(screws[0]!.diameterMm!) * screws[0]!.depthMm +
    disc(7) * T +
    (disc(17) - disc(7)) * control.recess!.depthMm
  expect(front.massKg).toBeCloseTo(kg(W * H * T - gone), 9)
  expect(panel(result, 'brace')?.massKg).toBeCloseTo(kg(0.75 * (W - 2 * T) * (D - 2 * T) * T), 9)
})

it('plain parts weigh what the board for them weighs', () => {
  const parts = [{ id: 'shelf', lengthMm: 1000, widthMm: 500, thicknessMm: T }]
  const result = cutList({ parts, stock }, { portLengthMm: null })
  if (isRefusal(result)) throw new Error('refused')
  expect(result.sections.panels[0]?.massKg).toBeCloseTo(kg(1000 * 500 * T), 9)
  expect(result.assumptions.map(({ at }) => at)).not.toContain('/stock/0/material')
})

it('plain parts of a board that says nothing of itself are weighed as plywood, and that is said', () => {
  const parts = [{ id: 'shelf', lengthMm: 1000, widthMm: 500, thicknessMm: T }]
  const result = cutList(
    { parts, stock: [{ lengthMm: 2440, widthMm: 1220, thicknessMm: T }] },
    { portLengthMm: null },
  )
  if (isRefusal(result)) throw new Error('refused')
  // Plywood: 650 kg/m3, Wood Handbook, Table 12-1, from memory; one metre by half a metre by 15 mm.
  expect(result.sections.panels[0]?.massKg).toBeCloseTo(650 * 1 * 0.5 * 0.015, 9)
  expect(result.assumptions).toContainEqual(
    expect.objectContaining({ at: '/stock/0/material', value: 'plywood' }),
  )
})
