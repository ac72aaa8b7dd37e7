import { describe, expect, it } from 'vitest'
import { REFERENCE_AIR } from '../../../src/core/air.ts'
import { enclosure } from '../../../src/core/box/enclosure.ts'
import { isRefusal } from '../../../src/core/outcome.ts'
import { cutList } from '../../../src/core/shop/cut-list.ts'
import type { CutListRequest } from '../../../src/schema/cut-list.ts'
import { checks, expectWithin } from '../../outside/checks.ts'

/** 120 x 240 x 160 mm of 12 mm board: 96 x 216 x 136 inside; two drivers of 66 mm in a column. */
const box: NonNullable<CutListRequest['box']> = {
  kind: 'closed',
  outer: { widthMm: 120, heightMm: 240, depthMm: 160 },
  panelThicknessMm: 12,
}
const frame = {
  outerDiameterMm: 76,
  cutoutDiameterMm: 66,
  depthMm: 50,
  magnetDiameterMm: 60,
  displacementL: 0.05,
}
const request: CutListRequest = {
  box,
  drivers: [{ id: 'main', count: 2, parameters: {}, frame }],
  stock: [{ id: 'ply', lengthMm: 1220, widthMm: 400, thicknessMm: 12 }],
}

function laid(change: Partial<CutListRequest>) {
  const result = cutList({ ...request, ...change }, { portLengthMm: null })
  if (isRefusal(result)) throw new Error(JSON.stringify(result.faults))
  return result
}
const withBox = (change: Partial<typeof box>) => laid({ box: { ...box, ...change } })
const faults = (change: Partial<typeof box>) => {
  const result = cutList({ ...request, box: { ...box, ...change } }, { portLengthMm: null })
  return isRefusal(result) ? result.faults : []
}
const panel = (result: ReturnType<typeof laid>, id: string) =>
  result.sections.panels.find((candidate) => candidate.id === id)
const codes = (result: ReturnType<typeof laid>) => result.findings.map(({ code }) => code)

describe('a brace', () => {
  it('takes its board without its window off the air (check row net-volume)', () => {
    const [check] = checks('shop-checks.json', 'box').filter(({ id }) => id === 'net-volume')
    const { innerMm, driverBodiesL, braceOpenShare, electronicsL } = check!.inputs
    const inner = { widthMm: innerMm[0], heightMm: innerMm[1], depthMm: innerMm[2] }
    const enclosed = enclosure(
      {
        kind: 'closed',
        inner,
        panelThicknessMm: 12,
        electronicsL,
        braces: [{ lies: 'level', openShare: braceOpenShare }],
      },
      [{ at: '/drivers/0', count: 2, frame: { ...frame, displacementL: driverBodiesL[0] } }],
      undefined,
      REFERENCE_AIR,
      1,
    )
    if (isRefusal(enclosed)) throw new Error('refused')
    // The row also takes off a tube and the solids of a lining, which are left out here.
    const { tubeL, braceL } = check!.expected
    expectWithin(check!, 'grossL', enclosed.grossVolumeL)
    expectWithin(check!, 'netL', enclosed.netVolumeL - tubeL - check!.inputs['liningSolidL'])
    expect(2 * driverBodiesL[0] + electronicsL + braceL).toBeCloseTo(
      (enclosed.grossVolumeL ?? 0) - enclosed.netVolumeL,
      4,
    )
  })

  it('is a panel from wall to wall with its window, once a box', () => {
    const result = laid({ box: { ...box, braces: [{ lies: 'level', openShare: 0.25 }] }, boxes: 2 })
    expect(panel(result, 'brace')).toMatchObject({ count: 2, lengthMm: 96, widthMm: 136 })
    // A quarter of the area is half of each side.
    expect(panel(result, 'brace')?.holes).toMatchObject([{ slotWidthMm: 48, slotHeightMm: 68 }])
  })

  it('goes between the drivers by itself, and says where', () => {
    const result = withBox({ braces: [{ lies: 'level' }] })
    const drivers = panel(result, 'front')?.holes.filter(({ kind }) => kind === 'driver') ?? []
    const middle = (drivers[0]!.yMm + drivers[1]!.yMm) / 2 - 12
    expect(result.assumptions).toContainEqual(
      expect.objectContaining({ at: '/box/braces/0/atMm', value: middle }),
    )
    expect(codes(result)).not.toContain('brace-hits-body')
  })

  it('that meets a driver is a blocker with both names and what is missing', () => {
    const result = withBox({ braces: [{ lies: 'behind-front', atMm: 30 }] })
    // The driver reaches 50 - 12 = 38 mm behind the front; the brace begins at 30 - 6 = 24 mm.
    const finding = result.findings.find(({ code }) => code === 'brace-hits-body')
    expect(finding?.value).toBeCloseTo(14, 9)
    expect(finding?.message).toMatch(/brace and main/)
  })

  it('of known volume and described at once is refused', () => {
    expect(faults({ braceL: 0.1, braces: [{ lies: 'level' }] })).toMatchObject([{ at: '/box/braceL' }])
  })

  it('of a box planned by its volume leaves that volume', () => {
    const { panels } = laid({
      box: {
        kind: 'closed',
        panelThicknessMm: 12,
        netVolumeL: 2,
        proportions: { width: 1, height: 1.6, depth: 1.2 },
        braces: [{ lies: 'level', openShare: 0 }],
      },
    }).sections
    const front = panels.find(({ id }) => id === 'front')!
    const brace = panels.find(({ id }) => id === 'brace')!
    const [w, h] = [
      Math.min(front.lengthMm, front.widthMm) - 24,
      Math.max(front.lengthMm, front.widthMm) - 24,
    ]
    const d = brace.widthMm
    // Gross less the brace and two drivers of 0.05 L each.
    expect((w * h * d - w * d * 12) * 1e-6 - 0.1).toBeCloseTo(2, 3)
  })
})

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
  it('goes where it is told, and meets a driver that reaches as far', () => {
    const result = withBox({ fittings: [{ id: 'big', holeDiameterMm: 20, depthMm: 110, xMm: 60, yMm: 160 }] })
    expect(panel(result, 'back')?.holes).toContainEqual(
      expect.objectContaining({ id: 'big', xMm: 60, yMm: 160 }),
    )
    // 110 mm from the back and 38 mm from the front of 136 mm.
    expect(result.findings.find(({ code }) => code === 'fitting-hits-driver')?.value).toBeCloseTo(12, 9)
  })
  it('that does not fit says by how much', () => {
    const high = [{ id: 'plate', cutout: { widthMm: 60, heightMm: 250 } }]
    expect(codes(withBox({ fittings: high }))).toContain('back-holes-do-not-fit')
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

describe('holes that the maker places', () => {
  it('lie where they are told, and are judged there', () => {
    const holes = [
      { for: 'main 1', xMm: 60, yMm: 180 },
      { for: 'main 2', xMm: 60, yMm: 112 },
    ]
    const result = withBox({ holes })
    expect(panel(result, 'front')?.holes.filter(({ kind }) => kind === 'driver')).toMatchObject([
      { xMm: 60, yMm: 180 },
      { xMm: 60, yMm: 112 },
    ])
    // 68 mm between centres less 66 mm of hole.
    expect(result.findings.find(({ code }) => code === 'web-breaks')?.value).toBeCloseTo(2, 9)
  })
  it('must be known by name', () => {
    expect(faults({ holes: [{ for: 'mian 1', xMm: 1, yMm: 1 }] })).toEqual([
      { at: '/box/holes/0/for', message: expect.stringContaining('"main 1"') },
    ])
  })
})

describe('bands', () => {
  const edging = { widthMm: 22, edges: 'all' as const, thicknessMm: 0.5, rollLengthM: 2.5 }
  const result = laid({ workshop: { kerfMm: 2.4, edging } })
  it('come off the saw size of the panel, which is what is laid out', () => {
    const front = panel(result, 'front')!
    expect([front.sawLengthMm, front.sawWidthMm]).toEqual([front.lengthMm - 1, front.widthMm - 1])
    const part = result.sections.sheets.flatMap(({ parts }) => parts).find(({ id }) => id === 'front')
    expect([part?.lengthMm, part?.widthMm]).toEqual([front.sawLengthMm, front.sawWidthMm])
  })
  it('are bought by whole rolls', () => {
    const { hardware, edging: plan } = result.sections
    const rolls = hardware.find(({ item }) => item === 'rolls of edge band')?.count
    expect(rolls).toBe(Math.ceil((plan?.stripToBuyMm ?? 0) / 2500))
  })
})

it('a laminated board is not to be glued with white glue on its face', () => {
  const stock = [{ ...request.stock[0]!, laminated: true }]
  expect(codes(laid({ stock }))).toContain('glue-on-laminate')
})
