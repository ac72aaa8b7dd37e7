import { describe, expect, it } from 'vitest'
import { isRefusal } from '../../../src/core/outcome.ts'
import { cutList } from '../../../src/core/shop/cut-list.ts'
import { boardMassKg, densityKgPerM3 } from '../../../src/core/shop/mass.ts'
import type { CutListRequest } from '../../../src/schema/cut-list.ts'

/** Two closed boxes, 120 x 240 x 160 mm of 12 mm board, 96 x 216 x 136 mm inside. */
const pair = {
  box: {
    kind: 'closed',
    outer: { widthMm: 120, heightMm: 240, depthMm: 160 },
    panelThicknessMm: 12,
    joint: 'butt',
    lining: 'walls',
  },
  boxes: 2,
  stock: [{ lengthMm: 1220, widthMm: 610, thicknessMm: 12, material: 'mdf' }],
} satisfies CutListRequest

function outcome(request: CutListRequest) {
  const result = cutList(request, { portLengthMm: null })
  if (isRefusal(result)) throw new Error(JSON.stringify(result.faults))
  return result
}
const count = (request: CutListRequest, wanted: string) =>
  outcome(request).sections.hardware.find(({ item }) => item === wanted)?.count ?? 0

describe('what is bought for two boxes', () => {
  it('sealant fills a round bead of 4 mm along every joint', () => {
    // Joints of one box: 4 x (240 + 96 + 136) mm. A bead of 4 mm is pi/4 x 16 mm2.
    const wantedMl = 2 * 4 * (240 + 96 + 136) * (Math.PI / 4) * 16 * 1e-3
    expect(count(pair, 'sealant') / wantedMl).toBeCloseTo(1, 1)
  })

  it('glue on mitres covers the bevel, the diagonal of the board', () => {
    const mitred = {
      ...pair,
      box: { ...pair.box, joint: 'mitre' as const, runsThrough: 'front-back' as const },
    }
    // Twelve edges of each box at their full length, 200 g/m2.
    const areaM2 = 2 * 4 * (120 + 240 + 160) * Math.hypot(12, 12) * 1e-6
    expect(count(mitred, 'white wood glue')).toBeCloseTo(areaM2 * 200, 9)
  })

  it('lining covers the back, both sides, top and bottom inside', () => {
    const areaM2 = (96 * 216 + 2 * 136 * 216 + 2 * 96 * 136) * 1e-6
    expect(count(pair, 'lining')).toBeCloseTo(2 * areaM2, 9)
  })
})

describe('what holds and feeds the drivers', () => {
  const frame = { outerDiameterMm: 76, cutoutDiameterMm: 66, boltCircleDiameterMm: 71, depthMm: 38 }
  const radiator = { fsHz: 40, qms: 8, vasL: 2, sdCm2: 30, frame }
  const board = { id: 'amplifier', board: { widthMm: 50, heightMm: 40 }, xMm: 90, yMm: 60 }
  const one: CutListRequest = {
    ...pair,
    drivers: [{ id: 'main', parameters: {}, frame }],
  }
  it('screws of drivers, radiators and boards, four each', () => {
    const full = { ...one, passiveRadiator: radiator, box: { ...pair.box, fittings: [board] } }
    expect(count(full, 'driver screws')).toBe(2 * (4 + 4))
    expect(count(full, 'machine screws with spacers and nuts')).toBe(2 * 4)
    // A strip along the middle of each flange: pi x (76 + 66) / 2 mm.
    expect(count(full, 'foam strip')).toBeCloseTo((2 * 2 * Math.PI * 71) / 1000, 9)
  })
  it('wire from the hole for the lead along the walls to the driver, 150 mm to spare', () => {
    // Driver in the middle, at 120 mm; the hole below it in the back at 2 x 12 + 8 = 32 mm; 136 mm between.
    expect(count(one, 'two-core wire')).toBeCloseTo((2 * (120 - 32 + 136 + 150)) / 1000, 9)
  })
  it('wire from the board where there is one, its place seen from behind', () => {
    const withBoard = { ...one, box: { ...pair.box, fittings: [board] } }
    // 90 mm from the left of the back is 30 mm from the left of the front; the driver is at 60, 120.
    expect(count(withBoard, 'two-core wire')).toBeCloseTo((2 * (30 + 60 + 136 + 150)) / 1000, 9)
  })
  it('panel screws that reach deeper where a rebate leaves less board above them', () => {
    // 30 mm through 12 mm of side enter an inset front by 18 mm, and 1 mm of pilot more; 5 mm of rebate leave 7 mm.
    const screws = { panel: { diameterMm: 3, lengthMm: 30 } }
    const box = { outer: { widthMm: 200, heightMm: 400, depthMm: 220 }, panelThicknessMm: 12 }
    const note = (joint: object) =>
      outcome({
        box: { kind: 'closed', ...box, ...joint },
        stock: [{ lengthMm: 2440, widthMm: 1220, thicknessMm: 12 }],
        workshop: { screws },
      }).sections.hardware.find(({ item }) => item === 'panel screws')?.note
    expect(note({ joint: 'rebate', rebateDepthMm: 5 })).toContain(
      'for 19 mm into that edge, 5 mm deeper in a rebate.',
    )
    expect(note({ joint: 'butt' })).toContain('for 19 mm into that edge.')
  })

  it('panel screws with the drill for each board', () => {
    const tall: CutListRequest = {
      ...pair,
      workshop: { screws: { panel: { diameterMm: 3, lengthMm: 30, countersunk: true } } },
    }
    const note = outcome(tall).sections.hardware.find(({ item }) => item === 'panel screws')?.note
    // Shop reference, section 7: clearance 3.2, fibreboard pilot 2.0, 1 mm deeper than the screw; countersink 1.5.
    expect(note).toContain('3.2 mm through')
    expect(note).toContain('2 mm for 19 mm into')
    expect(note).toContain('Countersink 1.5 mm')
  })
  it('glue for a brace along all its edges', () => {
    const braced = { ...pair, box: { ...pair.box, braces: [{ lies: 'level' as const }] } }
    // 96 x 136 mm, glued all round to 12 mm, 200 g/m2.
    const moreG = 2 * 2 * (96 + 136) * 12 * 1e-6 * 200
    expect(count(braced, 'white wood glue') - count(pair, 'white wood glue')).toBeCloseTo(moreG, 9)
  })
})

// Mass of a square metre by the densities usual for boards: common practice, no source.
it.each([
  ['mdf', 12, 8.88],
  ['plywood', 12, 7.8],
  ['particleboard', 16, 10.88],
  ['hdf', 3, 2.55],
] as const)('a square metre of %s, %d mm thick, weighs %d kg', (material, thicknessMm, massKg) => {
  expect(boardMassKg(1, thicknessMm, densityKgPerM3(material))).toBeCloseTo(massKg, 9)
})

it('the hole for the lead is two boards and itself above the lower edge of the back', () => {
  const holes = (request: CutListRequest) =>
    outcome(request).sections.panels.find(({ id }) => id === 'back')?.holes ?? []
  expect(holes(pair).map(({ xMm, yMm }) => [xMm, yMm])).toEqual([[60, 2 * 12 + 8]])
  const low = { ...pair, box: { ...pair.box, outer: { widthMm: 120, heightMm: 60, depthMm: 160 } } }
  expect(holes(low).map(({ yMm }) => yMm)).toEqual([30])
})

describe('thickness that is usual for the air inside', () => {
  const limit = (heightMm: number, panelThicknessMm: number) =>
    outcome({
      ...pair,
      box: { ...pair.box, panelThicknessMm, outer: { widthMm: 120, heightMm, depthMm: 160 } },
      stock: [],
    }).findings.find(({ code }) => code === 'board-thin-for-volume')?.limit

  // Inside, less two boards: 112 x 152 x (height - 8) mm in 4 mm board, 104 x 144 x (height - 16) mm in 8 mm board.
  it.each([
    [120, 4, 6], // 1.9 L
    [240, 8, 9], // 3.4 L
    [600, 8, 15], // 8.7 L
    [600, 15, undefined], // 6.7 L
  ])('a box %d mm high of %d mm board: %s mm', (heightMm, thicknessMm, expected) => {
    expect(limit(heightMm, thicknessMm)).toBe(expected)
  })
})

describe('driver screws in fibreboard', () => {
  const screwed = (heightMm: number): CutListRequest => ({
    ...pair,
    box: { ...pair.box, outer: { widthMm: 76, heightMm, depthMm: 160 } },
    drivers: [
      {
        id: 'main',
        parameters: {},
        frame: {
          outerDiameterMm: 56,
          cutoutDiameterMm: 44,
          boltCircleDiameterMm: 50,
          boltCount: 4,
          depthMm: 30,
        },
      },
    ],
  })
  const corner = (heightMm: number) =>
    outcome(screwed(heightMm)).findings.find(({ code }) => code === 'face-screw-near-corner')?.value

  it('are near a corner only when near both edges: 38 - 25 / sqrt 2 mm from each', () => {
    expect(corner(76)).toBeCloseTo(38 - 25 / Math.SQRT2, 9)
    expect(corner(160)).toBeUndefined()
  })
})

it('a net volume beside a slot with cheeks is what is left of the air inside', () => {
  const port = { slot: { widthMm: 40, heightMm: 10, onWall: true }, lengthMm: 72 }
  const { panels } = outcome({
    box: { kind: 'vented', netVolumeL: 2.5, proportions: { width: 1, height: 1.6, depth: 1.25 } },
    port,
    stock: pair.stock,
  }).sections
  const front = panels.find(({ id }) => id === 'front')!
  const side = panels.find(({ id }) => id === 'side')!
  const insideL = (front.lengthMm - 24) * (front.widthMm - 24) * side.widthMm * 1e-6
  expect(panels.filter(({ id }) => id === 'port cheek')).toHaveLength(1)
  // Slot and both cheeks 40 + 24 wide, slot and shelf 10 + 12 high, 60 behind the front.
  expect(insideL - (64 * 22 * 60) / 1e6).toBeCloseTo(2.5, 9)
})
