import { describe, expect, it } from 'vitest'
import { REFERENCE_AIR } from '../../../src/core/air.ts'
import { enclosure } from '../../../src/core/box/enclosure.ts'
import { isRefusal } from '../../../src/core/outcome.ts'
import { cutList } from '../../../src/core/shop/cut-list.ts'
import type { CutListRequest } from '../../../src/schema/cut-list.ts'
import { box, codes, faults, frame, laid, panel, request, withBox } from './small-box.ts'

describe('what goes on the back', () => {
  const fittings = [
    { id: 'switch', holeDiameterMm: 12, depthMm: 20 },
    { id: 'socket', cutout: { widthMm: 28, heightMm: 20 } },
    { id: 'amplifier', board: { widthMm: 60, heightMm: 40, screwInsetMm: 5 }, depthMm: 15 },
  ]
  it('stands in a column above the hole for the lead, with the wood it needs', () => {
    const back = panel(withBox({ fittings }), 'back')
    const of = (id: string) => back?.holes.find((hole) => hole.id === id)
    expect(of('switch')).toMatchObject({ kind: 'fitting', diameterMm: 12, xMm: 60 })
    expect(of('socket')).toMatchObject({ slotWidthMm: 28, slotHeightMm: 20 })
    const cable = of('cable')!
    expect(of('switch')!.yMm - 6 - (cable.yMm + 4)).toBeGreaterThanOrEqual(12)
    expect(of('socket')!.yMm - 10 - (of('switch')!.yMm + 6)).toBeGreaterThanOrEqual(12)
  })
  it('of a board are the screws at its corners', () => {
    const screws = panel(withBox({ fittings }), 'back')?.holes.filter(({ kind }) => kind === 'mounting') ?? []
    expect(screws).toHaveLength(4)
    expect(Math.max(...screws.map(({ xMm }) => xMm)) - Math.min(...screws.map(({ xMm }) => xMm))).toBeCloseTo(
      50,
      9,
    )
    expect(Math.max(...screws.map(({ yMm }) => yMm)) - Math.min(...screws.map(({ yMm }) => yMm))).toBeCloseTo(
      30,
      9,
    )
  })
  it('takes the cuboid of a board off the air', () => {
    const net = (given: typeof box) => {
      const enclosed = enclosure(given, [], undefined, REFERENCE_AIR, 1)
      return isRefusal(enclosed) ? 0 : enclosed.netVolumeL
    }
    expect(net(box) - net({ ...box, fittings })).toBeCloseTo((60 * 40 * 15) / 1e6, 9)
  })
  it('may be a board whose screws stand at its corners, not beyond its other side', () => {
    const board = (screwInsetMm: number) => ({
      id: 'amplifier',
      board: { widthMm: 60, heightMm: 40, screwInsetMm },
    })
    expect(faults({ fittings: [board(20)] })).toMatchObject([{ at: '/box/fittings/0/board/screwInsetMm' }])
    expect(faults({ fittings: [board(19)] })).toEqual([])
  })
  it('that runs into the hole for the lead is a blocker, as on the front', () => {
    // The lead: 8 mm wide, its middle told at 32 mm. A jack of 30 x 20 mm around (60, 30) covers 20 to 40 mm
    // of the height; the middle of the lead is 8 mm inside it and its rim 4 mm more.
    const jack = { id: 'jack', cutout: { widthMm: 30, heightMm: 20 }, xMm: 60, yMm: 30 }
    const holes = [{ for: 'cable', xMm: 60, yMm: 32 }]
    const found = withBox({ fittings: [jack], holes }).findings.find(({ code }) => code === 'back-web-breaks')
    expect(found).toMatchObject({ severity: 'blocker', at: '/box/fittings/0' })
    expect(found?.value).toBeCloseTo(-12, 9)
    expect(found?.message).toBe('On the back: The holes of cable and jack run 12 mm into each other.')
  })
  it('goes where it is told, and meets a driver that reaches as far', () => {
    const result = withBox({ fittings: [{ id: 'big', holeDiameterMm: 20, depthMm: 110, xMm: 60, yMm: 160 }] })
    expect(panel(result, 'back')?.holes).toContainEqual(
      expect.objectContaining({ id: 'big', xMm: 60, yMm: 160 }),
    )
    // 110 mm from the back and 38 mm from the front of 136 mm.
    expect(result.findings.find(({ code }) => code === 'meets-in-depth')?.value).toBeCloseTo(12, 9)
  })
  it('as deep as the whole box is a blocker on its own', () => {
    const fittings = [{ id: 'deep', holeDiameterMm: 10, depthMm: 140, xMm: 20, yMm: 24 }]
    const finding = withBox({ fittings }).findings.find(({ code }) => code === 'meets-in-depth')
    expect(finding?.value).toBeCloseTo(4, 9)
    expect(finding?.message).toContain('deep on the back and the front')
  })
  it('may be seen from behind: left there is right in front', () => {
    // 30 mm from the left edge of the back is 90 mm from the left edge of the front.
    const narrow = [{ ...request.drivers![0]!, count: 1, frame: { ...frame, magnetDiameterMm: 40 } }]
    const holes = [{ for: 'main', xMm: 75, yMm: 120 }]
    const said = (xMm: number) =>
      codes(
        laid({
          drivers: narrow,
          box: { ...box, holes, fittings: [{ id: 'big', holeDiameterMm: 20, depthMm: 110, xMm, yMm: 120 }] },
        }),
      )
    expect(said(30)).toContain('meets-in-depth')
    expect(said(90)).not.toContain('meets-in-depth')
  })
  it('meets the tube of a port too', () => {
    const result = cutList(
      {
        ...request,
        box: {
          ...box,
          kind: 'vented',
          fittings: [{ id: 'plate', cutout: { widthMm: 80, heightMm: 180 }, depthMm: 30, xMm: 60, yMm: 120 }],
        },
        drivers: [{ ...request.drivers![0]!, count: 1 }],
        port: { innerDiameterMm: 26, outerDiameterMm: 32, lengthMm: 125 },
      },
      { portLengthMm: null },
    )
    if (isRefusal(result)) throw new Error('refused')
    // The tube reaches 125 - 12 mm in, the plate begins at 136 - 30 mm.
    const finding = result.findings.find(({ code }) => code === 'meets-in-depth')
    expect(finding?.value).toBeCloseTo(7, 9)
    expect(finding?.message).toMatch(/plate on the back and port on the front/)
  })
  it('side by side in one place is told with both names', () => {
    const fittings = [
      { id: 'amplifier', board: { widthMm: 60, heightMm: 40 }, depthMm: 15, xMm: 60, yMm: 120 },
      { id: 'switch', holeDiameterMm: 12, xMm: 60, yMm: 145 },
    ]
    // The board ends at 140 mm, the switch begins at 139 mm.
    const finding = withBox({ fittings }).findings.find(({ code }) => code === 'bodies-collide')
    expect(finding).toMatchObject({
      at: '/box/fittings/1',
      message: expect.stringContaining('amplifier and switch'),
    })
    expect(finding?.value).toBeCloseTo(-1, 9)
  })
  it('on the front counts among its holes', () => {
    const at = (yMm: number) => [{ id: 'jack', panel: 'front' as const, holeDiameterMm: 8, xMm: 60, yMm }]
    const front = panel(withBox({ fittings: at(20) }), 'front')
    expect(front?.holes).toContainEqual(expect.objectContaining({ id: 'jack', diameterMm: 8 }))
    const drivers = front?.holes.filter(({ kind }) => kind === 'driver') ?? []
    const lowest = Math.min(...drivers.map(({ yMm }) => yMm))
    // Two millimetres of wood below the lower driver.
    const thin = withBox({ fittings: at(lowest - 33 - 2 - 4) }).findings
    expect(thin.find(({ code }) => code === 'web-breaks')?.value).toBeCloseTo(2, 9)
  })
  it('that does not fit says by how much', () => {
    const high = [{ id: 'plate', cutout: { widthMm: 60, heightMm: 250 } }]
    expect(codes(withBox({ fittings: high }))).toContain('back-holes-do-not-fit')
  })
  it('has names of its own', () => {
    const switches = [
      { id: 'switch', holeDiameterMm: 12 },
      { id: 'switch', holeDiameterMm: 12 },
      { id: 'cable', holeDiameterMm: 8 },
    ]
    expect(faults({ fittings: switches }).map(({ at }) => at)).toEqual([
      '/box/fittings/1/id',
      '/box/fittings/2/id',
    ])
  })
  it.each([
    [{ id: 'nothing' }, '/box/fittings/0'],
    [{ id: 'two', holeDiameterMm: 8, cutout: { widthMm: 8, heightMm: 8 } }, '/box/fittings/0'],
    [{ id: 'half', holeDiameterMm: 8, xMm: 20 }, '/box/fittings/0/xMm'],
    [{ id: 'lost', holeDiameterMm: 8, panel: 'front' as const }, '/box/fittings/0/xMm'],
  ])('is refused when it contradicts itself: %o', (fitting, at) => {
    expect(faults({ fittings: [fitting] }).map((fault) => fault.at)).toContain(at)
  })
  it('of a passive radiator with a frame is its hole with its screws', () => {
    const result = laid({
      box: { ...box, kind: 'passive-radiator' },
      passiveRadiator: {
        fsHz: 40,
        qms: 8,
        vasL: 2,
        sdCm2: 30,
        frame: { outerDiameterMm: 80, cutoutDiameterMm: 68, boltCircleDiameterMm: 74, depthMm: 20 },
      },
    })
    const holes = panel(result, 'back')?.holes ?? []
    expect(holes.find(({ kind }) => kind === 'radiator')).toMatchObject({ diameterMm: 68, xMm: 60 })
    expect(holes.filter(({ kind }) => kind === 'bolt')).toHaveLength(4)
    expect(codes(result)).not.toContain('radiator-not-measured')
  })
})

it('a passive radiator takes its body off the air', () => {
  const passiveRadiator = {
    fsHz: 40,
    qms: 8,
    vasL: 2,
    sdCm2: 30,
    frame: { outerDiameterMm: 80, cutoutDiameterMm: 68, depthMm: 20, displacementL: 0.07 },
  }
  const volume = { kind: 'passive-radiator' as const, panelThicknessMm: 12, netVolumeL: 3 }
  const inside = (change: Partial<CutListRequest>) => {
    const proportions = { width: 1, height: 1, depth: 1 }
    const { panels } = laid({ box: { ...volume, proportions }, ...change }).sections
    const edge = panels.find(({ id }) => id === 'front')!.lengthMm - 24
    return edge ** 3 * 1e-6
  }
  expect(inside({ passiveRadiator }) - inside({})).toBeCloseTo(0.07, 9)
})
