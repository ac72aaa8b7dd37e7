import { describe, expect, it } from 'vitest'
import { isRefusal } from '../../../src/core/outcome.ts'
import { cutList } from '../../../src/core/shop/cut-list.ts'
import type { CutListRequest } from '../../../src/schema/cut-list.ts'
import { faultsOfLayout } from './saw-by-hand.ts'

/** Two boxes of 12 mm board, 96 x 216 x 136 mm inside, with a slot of 15 mm on the floor, 60 mm long. */
const floor: CutListRequest = {
  box: {
    kind: 'vented',
    outer: { widthMm: 120, heightMm: 240, depthMm: 160 },
    panelThicknessMm: 12,
  },
  boxes: 2,
  drivers: [
    { id: 'main', parameters: {}, frame: { outerDiameterMm: 76, cutoutDiameterMm: 66, depthMm: 38 } },
  ],
  port: { slot: { widthMm: 96, heightMm: 15, onWall: true }, lengthMm: 60 },
  signal: { volumeControl: { resistanceKohm: 50 } },
  supply: { kind: 'adapter', indicator: { colour: 'green' } },
  stock: [{ lengthMm: 1220, widthMm: 610, thicknessMm: 12, material: 'mdf' }],
  workshop: { kerfMm: 2.4 },
}
const slot = (widthMm: number, onWall: boolean, count = 1): CutListRequest => ({
  ...floor,
  port: { count, slot: { widthMm, heightMm: 15, onWall }, lengthMm: 60 },
})

function outcome(request: CutListRequest, portLengthMm: number | null = null) {
  const result = cutList(request, { portLengthMm })
  if (isRefusal(result)) throw new Error(JSON.stringify(result.faults))
  return result
}
const boards = (request: CutListRequest, portLengthMm: number | null = null) =>
  outcome(request, portLengthMm)
    .sections.panels.filter(({ id }) => id.startsWith('port'))
    .map(({ id, count, lengthMm, widthMm }) => [id, count, lengthMm, widthMm])
const holes = (request: CutListRequest) =>
  outcome(request).sections.panels.find(({ id }) => id === 'front')?.holes ?? []
const codes = (request: CutListRequest) => outcome(request).findings.map(({ code }) => code)
const glueG = (request: CutListRequest) =>
  outcome(request).sections.hardware.find(({ item }) => item === 'white wood glue')?.count ?? 0

describe('a slot on the wall', () => {
  it('lies on the inner floor, everything else above its shelf and inside the opening', () => {
    const all = holes(floor)
    const opening = all.find(({ kind }) => kind === 'slot')
    expect([opening?.xMm, opening?.yMm]).toEqual([60, 12 + 7.5])
    for (const hole of all.filter(({ kind }) => kind !== 'slot')) {
      const radius = (hole.diameterMm ?? 0) / 2
      // Floor 12, slot 15, shelf 12.
      expect(hole.yMm - radius).toBeGreaterThanOrEqual(39)
      expect(hole.yMm + radius).toBeLessThanOrEqual(228)
      expect(Math.abs(hole.xMm - 60) + radius).toBeLessThanOrEqual(48)
    }
    const height = (kind: string) => all.find((hole) => hole.kind === kind)?.yMm ?? 0
    expect(height('control')).toBe(height('indicator'))
    expect(height('control')).toBeLessThan(height('driver'))
    expect(codes(floor)).not.toContain('web-thin')
  })

  it('does so too in a box that lies', () => {
    const low = { ...floor, box: { ...floor.box!, outer: { widthMm: 300, heightMm: 150, depthMm: 160 } } }
    const all = holes({ ...low, port: { slot: { widthMm: 276, heightMm: 15, onWall: true }, lengthMm: 60 } })
    expect(all.map(({ kind, yMm }) => [kind, yMm])).toEqual([
      // 126 inside less slot and shelf, 99, has its middle at 12 + 27 + 49.5; small holes a quarter of it off.
      ['driver', 88.5],
      ['slot', 19.5],
      ['control', 88.5 + 24.75],
      ['indicator', 88.5 - 24.75],
    ])
  })

  it('opens an inset front at its edge, which is no thin web', () => {
    const inset = { ...floor, box: { ...floor.box!, runsThrough: 'sides' as const } }
    expect(holes(inset).find(({ kind }) => kind === 'slot')?.yMm).toBe(7.5)
    expect(codes(inset)).not.toContain('web-breaks')
  })

  it('two lie side by side with a cheek each, or one on the shelf of the other', () => {
    const wide = {
      ...slot(80, true, 2),
      box: { ...floor.box!, outer: { widthMm: 240, heightMm: 260, depthMm: 160 } },
    }
    expect(
      holes(wide)
        .filter(({ kind }) => kind === 'slot')
        .map(({ xMm, yMm }) => [xMm, yMm]),
    ).toEqual([
      [68, 19.5],
      [172, 19.5],
    ])
    expect(
      holes(slot(96, true, 2))
        .filter(({ kind }) => kind === 'slot')
        .map(({ yMm }) => yMm),
    ).toEqual([19.5, 46.5])
  })
})

describe('the boards of the duct', () => {
  // 60 mm less the front of 12 are 48 behind it; counts are for both boxes.
  it.each<[string, CutListRequest, unknown[]]>([
    ['from wall to wall on the floor: one shelf', slot(96, true), [['port shelf', 2, 48, 96]]],
    [
      'narrower on the floor: cheeks of 15 + 12',
      slot(60, true),
      [
        ['port shelf', 2, 48, 60],
        ['port cheek', 4, 48, 27],
      ],
    ],
    ['from wall to wall, free: two shelves', slot(96, false), [['port shelf', 4, 48, 96]]],
    [
      'free: two shelves, cheeks of 15 + 24',
      slot(60, false),
      [
        ['port shelf', 4, 48, 60],
        ['port cheek', 4, 48, 39],
      ],
    ],
    ['two slots', slot(96, true, 2), [['port shelf', 4, 48, 96]]],
    ['no room for cheeks of 12 in 11.5', slot(73, true), [['port shelf', 2, 48, 73]]],
  ])('%s', (_, request, expected) => {
    expect(boards(request)).toEqual(expected)
  })

  it('none without a length, nor where the front is long enough', () => {
    const tuned = { ...floor, port: { slot: { widthMm: 96, heightMm: 15, onWall: true }, tuningHz: 90 } }
    expect(boards(tuned)).toEqual([])
    expect(boards(tuned, 12)).toEqual([])
    expect(boards(tuned, 12.5)).toEqual([['port shelf', 2, 0.5, 96]])
  })

  it('are sawn from the boards on hand with the rest, and weigh', () => {
    const { sections } = outcome(slot(60, true))
    const parts = sections.panels.map(({ id, lengthMm, widthMm, count }) => ({
      id,
      lengthMm,
      widthMm,
      count,
    }))
    expect(faultsOfLayout({ stock: floor.stock, workshop: { kerfMm: 2.4 }, parts }, sections)).toEqual([])
    const placed = sections.sheets.flatMap((sheet) => sheet.parts).filter(({ id }) => id.startsWith('port'))
    expect(placed).toHaveLength(6)
    // 48 x 60 x 12 mm of fibreboard at 740 kg/m3.
    expect(sections.panels.find(({ id }) => id === 'port shelf')?.massKg).toBeCloseTo(0.0255744, 9)
  })

  it('are glued: one shelf at its front and both sides, in both boxes', () => {
    const { port: _, ...without } = floor
    // 2 x (96 + 2 x 48) mm of joint, 12 mm wide, at 200 g/m2.
    expect(glueG(floor) - glueG(without)).toBeCloseTo(2 * 192 * 12 * 1e-6 * 200, 9)
  })

  it('say how they sit, and where no cheek goes', () => {
    const said = (request: CutListRequest) =>
      outcome(request).findings.find(({ code }) => code === 'slot-duct-of-board')?.message
    expect(said(floor)).toContain('a shelf 15 mm above it')
    expect(said(slot(60, false))).toMatch(/two shelves.*two cheeks/)
    expect(codes(slot(60, true))).not.toContain('no-room-for-cheeks')
    expect(codes(slot(73, true))).toContain('no-room-for-cheeks')
  })
})

it('whether the slot lies on a wall is assumed when nobody says', () => {
  const open = { ...floor, port: { slot: { widthMm: 60, heightMm: 15 }, lengthMm: 60 } }
  const rows = (request: CutListRequest) => outcome(request).assumptions.map(({ at }) => at)
  expect(rows(open)).toContain('/port/slot/onWall')
  expect(rows(floor)).not.toContain('/port/slot/onWall')
})
