import { describe, expect, it } from 'vitest'
import { REFERENCE_AIR } from '../../../src/core/air.ts'
import { enclosure } from '../../../src/core/box/enclosure.ts'
import { isRefusal } from '../../../src/core/outcome.ts'
import { checks, expectWithin } from '../../outside/checks.ts'
import { box, codes, faults, frame, laid, panel, request, withBox } from './small-box.ts'

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

  it('outside the walls is a blocker at its place, and holds no panel', () => {
    const upright = (atMm: number) => withBox({ braces: [{ lies: 'upright', atMm }] })
    const found = (atMm: number) =>
      upright(atMm).findings.find(({ code }) => code === 'brace-outside-box')?.value
    // 96 mm between left and right, 12 mm of brace: its middle may be at 6 to 90 mm.
    expect(found(500)).toBeCloseTo(500 + 6 - 96, 9)
    expect(found(0)).toBeCloseTo(6, 9)
    expect(found(91)).toBeCloseTo(1, 9)
    expect([found(6), found(90)]).toEqual([undefined, undefined])
    expect(panel(upright(500), 'front')?.resonance).toEqual(panel(withBox({}), 'front')?.resonance)
  })

  it('that meets a driver is a blocker with both names and what is missing', () => {
    const result = withBox({ braces: [{ lies: 'behind-front', atMm: 30 }] })
    // The driver reaches 50 - 12 = 38 mm behind the front; the brace begins at 30 - 6 = 24 mm.
    const finding = result.findings.find(({ code }) => code === 'brace-hits-body')
    expect(finding?.value).toBeCloseTo(14, 9)
    expect(finding?.message).toMatch(/brace and main/)
  })

  it('that meets several bodies names each pair, with what is missing for each', () => {
    // Drivers reach 38 mm behind the front, a brace around 40 mm begins at 34: 4 mm for both. The socket begins at
    // 136 - 100 = 36 mm, the brace ends at 46: 10 mm.
    const fittings = [{ id: 'socket', holeDiameterMm: 10, depthMm: 100, xMm: 20, yMm: 120 }]
    const braces = [{ lies: 'behind-front' as const, atMm: 40, openShare: 0 }]
    const found = withBox({ fittings, braces }).findings.filter(({ code }) => code === 'brace-hits-body')
    expect(found.map(({ at, value, message }) => [at, value, / and (.+) want/.exec(message)?.[1]])).toEqual([
      ['/box/braces/0', 10, 'socket'],
      ['/box/braces/0', 4, 'main 1'],
      ['/box/braces/0', 4, 'main 2'],
    ])
  })

  it('parallel to the front lets a driver through its window', () => {
    // One driver in the middle: a window of 0.64 is 76.8 mm wide, its basket 66 mm.
    const one = { drivers: [{ ...request.drivers![0]!, count: 1 }] }
    const brace = { lies: 'behind-front' as const, atMm: 30 }
    const said = (openShare: number) =>
      codes(laid({ ...one, box: { ...box, braces: [{ ...brace, openShare }] } }))
    expect(said(0.64)).not.toContain('brace-hits-body')
    // 0.45 leaves 64.4 mm.
    expect(said(0.45)).toContain('brace-hits-body')
  })

  it('meets what comes from the back as well', () => {
    const result = withBox({
      fittings: [{ id: 'socket', holeDiameterMm: 20, depthMm: 60, xMm: 60, yMm: 120 }],
      braces: [{ lies: 'behind-front', atMm: 80, openShare: 0 }],
    })
    // The socket begins 136 - 60 = 76 mm behind the front, the brace ends at 86.
    const finding = result.findings.find(({ code }) => code === 'brace-hits-body')
    expect(finding?.value).toBeCloseTo(10, 9)
    expect(finding?.message).toMatch(/brace and socket/)
  })

  it('is one of several that spread evenly, and never lie in one place', () => {
    const result = withBox({ braces: [{ lies: 'behind-front' }, { lies: 'behind-front' }] })
    const at = (index: number) =>
      Number(result.assumptions.find((row) => row.at === `/box/braces/${index}/atMm`)?.value)
    expect(at(0)).toBeCloseTo(136 / 3, 9)
    expect(at(1)).toBeCloseTo((2 * 136) / 3, 9)
  })

  it('must not lie in another, and says so when two cross', () => {
    const same = [
      { lies: 'behind-front' as const, atMm: 100 },
      { lies: 'behind-front' as const, atMm: 104 },
    ]
    const finding = withBox({ braces: same }).findings.find(({ code }) => code === 'brace-hits-body')
    expect(finding).toMatchObject({ at: '/box/braces/1', value: 12 - 4 })
    expect(codes(withBox({ braces: [{ lies: 'level' }, { lies: 'upright' }] }))).toContain('braces-cross')
  })

  it('halves the free part of the walls it holds, which then ring higher', () => {
    const rings = (change: Partial<typeof box>, id: string) =>
      panel(withBox(change), id)?.resonance?.supportedHz ?? 0
    // Free 216 x 136 mm before, (216 - 12) / 2 = 102 x 136 mm after: f goes with 1/a2 + 1/b2.
    const wanted = (1 / 102 ** 2 + 1 / 136 ** 2) / (1 / 216 ** 2 + 1 / 136 ** 2)
    const braces = [{ lies: 'level' as const, atMm: 108 }]
    expect(rings({ braces }, 'side') / rings({}, 'side')).toBeCloseTo(wanted, 9)
    expect(rings({ braces }, 'top-bottom')).toBe(rings({}, 'top-bottom'))
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
