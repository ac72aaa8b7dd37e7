import { describe, expect, it } from 'vitest'
import { evaluateWorking } from '../../../src/core/evaluate-working.ts'
import { isRefusal } from '../../../src/core/outcome.ts'
import { cutList } from '../../../src/core/shop/cut-list.ts'
import type { CutListRequest } from '../../../src/schema/cut-list.ts'
import { faultsOfLayout } from './saw-by-hand.ts'

const driver = {
  id: 'main',
  count: 2,
  parameters: {},
  frame: {
    outerDiameterMm: 76,
    cutoutDiameterMm: 66,
    boltCircleDiameterMm: 71,
    boltCount: 4,
    depthMm: 38,
    flangeThicknessMm: 3,
    displacementL: 0.05,
  },
}

/** A pair of vented boxes, 120 x 240 x 160 mm of 12 mm board, from one offcut. */
const pair: CutListRequest = {
  box: {
    kind: 'vented',
    outer: { widthMm: 120, heightMm: 240, depthMm: 160 },
    panelThicknessMm: 12,
    joint: 'butt',
    lining: 'walls',
  },
  boxes: 2,
  drivers: [driver],
  port: { count: 1, innerDiameterMm: 26, outerDiameterMm: 32, tuningHz: 105 },
  signal: { volumeControl: { resistanceKohm: 50 } },
  supply: { kind: 'adapter', indicator: { colour: 'green' } },
  stock: [{ id: 'ply', lengthMm: 1220, widthMm: 400, thicknessMm: 12, count: 1, grain: 'length', trimMm: 5 }],
  workshop: {
    kerfMm: 2.4,
    holeSawsMm: [22, 32, 57, 64, 68, 76],
    screws: {
      panel: { diameterMm: 3, lengthMm: 30, countersunk: true },
      driver: { diameterMm: 3, lengthMm: 10 },
    },
    edging: { widthMm: 22, slitsInto: 1, overhangMm: 10, edges: 'front' },
  },
}

function outcome(request: CutListRequest, portLengthMm: number | null = 40) {
  const result = cutList(request, { portLengthMm })
  if (isRefusal(result)) throw new Error(JSON.stringify(result.faults))
  return result
}

function faultsAt(request: CutListRequest) {
  const result = cutList(request, { portLengthMm: 40 })
  return isRefusal(result) ? result.faults.map(({ at }) => at) : []
}

const codes = (request: CutListRequest, portLengthMm?: number) =>
  outcome(request, portLengthMm).findings.map(({ code }) => code)

describe('a pair of boxes from one offcut', () => {
  const { sections, findings, working } = outcome(pair)

  it('both boxes come out of the board, every cut from edge to edge', () => {
    expect(sections.sheets).toHaveLength(1)
    expect(sections.bound).toBe(1)
    const asParts = {
      stock: pair.stock,
      workshop: { kerfMm: 2.4 },
      parts: sections.panels.map(({ id, lengthMm, widthMm, count }) => ({ id, lengthMm, widthMm, count })),
    }
    expect(faultsOfLayout(asParts, sections)).toEqual([])
    // Shop reference, section 1: two fronts and backs 120 x 240, four sides 240 x 136, four of 96 x 136.
    expect(sections.usedAreaM2).toBeCloseTo(2 * 0.148992, 9)
    expect(sections.stockAreaM2).toBeCloseTo(1.22 * 0.4, 9)
  })

  it('everything on the front keeps its distance', () => {
    const front = sections.panels.find(({ id }) => id === 'front')
    const holes = front?.holes.filter(({ kind }) => kind !== 'bolt') ?? []
    expect(holes.map(({ kind }) => kind).sort()).toEqual(['control', 'driver', 'driver', 'indicator', 'port'])
    for (const [index, a] of holes.entries()) {
      expect(Math.min(a.xMm, 120 - a.xMm) - (a.diameterMm ?? 0) / 2).toBeGreaterThanOrEqual(12)
      expect(Math.min(a.yMm, 240 - a.yMm) - (a.diameterMm ?? 0) / 2).toBeGreaterThanOrEqual(12)
      for (const b of holes.slice(index + 1)) {
        const gap = Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm) - ((a.diameterMm ?? 0) + (b.diameterMm ?? 0)) / 2
        expect(gap).toBeGreaterThanOrEqual(12 - 1e-9)
      }
    }
  })

  it('takes the smaller saw and a file where the next one eats the screws', () => {
    // Shop reference: a 66 mm cut-out on a 71 mm bolt circle is sawn with 64 and filed 1 mm.
    const hole = sections.panels[0]?.holes.find(({ kind }) => kind === 'driver')
    expect(hole?.drillMm).toBe(64)
    expect(findings.map(({ code }) => code)).toEqual(['hole-to-file', 'edges-glued-only'])
  })

  it('bands the four edges of both fronts', () => {
    // edging-length-4: 240 + 120 + 240 + 120 with 10 mm at every end is 800 mm a front.
    expect(sections.edging).toEqual({
      stripEachMm: 22,
      bandLengthMm: 1600,
      stripToBuyMm: expect.closeTo(1680, 9),
      edges: 8,
    })
  })

  it('prints a working that agrees with the sections', async () => {
    const steps = await evaluateWorking(working)
    const result = (quantity: string) => steps.find((step) => step.quantity === quantity)?.result
    expect(result('air inside the walls')).toBeCloseTo(2.820096, 9)
    expect(result('length of all edge bands')).toBe(sections.edging?.bandLengthMm)
    expect(result('fewest boards by area')).toBe(sections.bound)
  })

  it('holds no figure that is not a number', () => {
    expect(
      JSON.stringify(sections, (_, value) =>
        typeof value === 'number' && !Number.isFinite(value) ? 'BAD' : value,
      ),
    ).not.toContain('BAD')
  })
})

describe('what does not fit is told, not drawn', () => {
  it('a board too small for both boxes leaves parts over and says which board would do', () => {
    const short = { ...pair, stock: [{ ...pair.stock[0]!, lengthMm: 700 }] }
    const { sections, findings } = outcome(short)
    const finding = findings.find(({ code }) => code === 'boards-do-not-suffice')
    expect(finding?.severity).toBe('blocker')
    expect(finding?.value).toBe(sections.notPlaced.reduce((sum, { count }) => sum + count, 0))
  })

  it('a board of another thickness is named', () => {
    expect(codes({ ...pair, stock: [{ ...pair.stock[0]!, thicknessMm: 9 }] })).toContain(
      'no-board-of-thickness',
    )
  })

  it('an empty stock places nothing and has no bound', () => {
    const { sections } = outcome({ ...pair, stock: [] })
    expect(sections.sheets).toEqual([])
    expect(sections.bound).toBeNull()
  })

  it('a driver wider than the opening is a blocker and no hole is drawn', () => {
    const wide = {
      ...driver,
      frame: { ...driver.frame, cutoutDiameterMm: 97, outerDiameterMm: 110, boltCircleDiameterMm: 104 },
    }
    const { sections, findings } = outcome({ ...pair, drivers: [{ ...wide, count: 1 }] })
    expect(findings.find(({ code }) => code === 'hole-wider-than-opening')?.value).toBeCloseTo(1, 9)
    expect(sections.panels.find(({ id }) => id === 'front')?.holes).toEqual([])
  })

  it('a tube of 122 mm leaves just one diameter behind it, one of 123 mm does not', () => {
    // 160 - 24 - (122 - 12) = 26 mm, the inner diameter.
    expect(codes(pair, 122)).not.toContain('tube-near-back')
    expect(codes(pair, 123)).toContain('tube-near-back')
    expect(codes(pair, 147)).not.toContain('tube-hits-back')
    // 136 + 12: the tube touches the back board and is closed by it.
    expect(codes(pair, 148)).toContain('tube-hits-back')
    expect(codes(pair, 148)).not.toContain('tube-near-back')
  })
})

it('a strip too narrow matters only where an edge is banded', () => {
  const narrow = { ...pair, workshop: { ...pair.workshop, edging: { widthMm: 8 } } }
  const mitred = {
    ...narrow,
    box: { ...pair.box!, joint: 'mitre' as const, runsThrough: 'front-back' as const },
  }
  expect(codes(narrow)).toContain('edging-too-narrow')
  expect(outcome(mitred).sections.edging).toBeNull()
  expect(codes(mitred).filter((code) => code.startsWith('edging'))).toEqual([])
})

it('bad cover on one driver does not hide bad land on another', () => {
  // Saw of 68 only: land (71 - 68 - 2.0) / 2 on A; cover (69 - 68) / 2 on B, which has no bolt circle.
  const { boltCircleDiameterMm: _, boltCount: __, ...round } = driver.frame
  const b = { ...driver, id: 'b', count: 1, frame: { ...round, outerDiameterMm: 69 } }
  const found = codes({
    ...pair,
    drivers: [
      { ...driver, count: 1, frame: { ...driver.frame, cutoutDiameterMm: 68 } },
      { ...b, frame: { ...b.frame, cutoutDiameterMm: 68 } },
    ],
    workshop: { ...pair.workshop, holeSawsMm: [68] },
  })
  expect(found).toContain('saw-eats-screws')
  expect(found).toContain('flange-covers-little')
})

describe('what cannot be computed is refused, every fault at once', () => {
  it.each<[string, CutListRequest, string[]]>([
    ['neither box nor parts', { stock: [] }, ['/box']],
    ['both', { ...pair, parts: [{ lengthMm: 1, widthMm: 1 }] }, ['/parts']],
    ['two boards of one name', { ...pair, stock: [pair.stock[0]!, pair.stock[0]!] }, ['/stock/1/id']],
    [
      'a board with the name that another gets for want of one',
      {
        ...pair,
        stock: [
          { ...pair.stock[0]!, id: 'board 2' },
          { lengthMm: 600, widthMm: 300 },
        ],
      },
      ['/stock/1/id'],
    ],
    [
      'a volume without proportions',
      { stock: pair.stock, box: { kind: 'closed', netVolumeL: 2 } },
      ['/box/proportions'],
    ],
    [
      'walls thicker than the box',
      { ...pair, box: { ...pair.box!, panelThicknessMm: 60 } },
      ['/box/outer/widthMm'],
    ],
    [
      'no thickness anywhere, and a volume without proportions',
      { stock: [], box: { kind: 'closed', netVolumeL: 2 } },
      ['/box/proportions', '/box/panelThicknessMm'],
    ],
    [
      'a rebate in the front',
      { ...pair, box: { ...pair.box!, joint: 'rebate', runsThrough: 'front-back' } },
      ['/box/runsThrough'],
    ],
    [
      'a rebate through the board',
      { ...pair, box: { ...pair.box!, joint: 'rebate', rebateDepthMm: 12 } },
      ['/box/rebateDepthMm'],
    ],
    [
      'the depth of a rebate for a butt joint',
      { ...pair, box: { ...pair.box!, rebateDepthMm: 6 } },
      ['/box/rebateDepthMm'],
    ],
    [
      'a frame that no driver has, beside a fault of the box',
      {
        ...pair,
        box: { ...pair.box!, panelThicknessMm: 60 },
        drivers: [{ ...driver, frame: { ...driver.frame, magnetDiameterMm: 67 } }],
      },
      ['/box/outer/widthMm', '/drivers/0/frame/magnetDiameterMm'],
    ],
  ])('%s', (_, request, at) => {
    expect(faultsAt(request)).toEqual(at)
  })
})

it('a net volume with proportions gets its outer sides: 2.5 L at 1 : 1.6 : 1.25 in 12 mm', () => {
  const { sections, assumptions } = outcome({
    stock: [{ lengthMm: 1220, widthMm: 610, thicknessMm: 12, material: 'mdf' }],
    box: { kind: 'closed', netVolumeL: 2.5, proportions: { width: 1, height: 1.6, depth: 1.25 } },
  })
  const front = sections.panels.find(({ id }) => id === 'front')
  // Check row outer-from-net: 127.185 x 203.495 mm.
  expect(front?.lengthMm).toBeCloseTo(127.185, 2)
  expect(front?.widthMm).toBeCloseTo(203.495, 2)
  expect(assumptions.map(({ at }) => at)).toContain('/box/panelThicknessMm')
})

describe('holes that nobody measured', () => {
  const rows = (request: CutListRequest) =>
    outcome(request).assumptions.filter(({ at }) => /leadHole|bushLength/.test(at))

  it('lead and bush are assumed where they may be given', () => {
    expect(rows(pair).map(({ at, value, unit }) => [at, value, unit])).toEqual([
      ['/signal/volumeControl/bushLengthMm', 7, 'mm'],
      ['/workshop/leadHoleMm', 8, 'mm'],
    ])
  })

  it('what is given is drilled and not assumed', () => {
    const given = {
      ...pair,
      signal: { volumeControl: { resistanceKohm: 50, bushLengthMm: 9 } },
      workshop: { ...pair.workshop, leadHoleMm: 6 },
    }
    const back = outcome(given).sections.panels.find(({ id }) => id === 'back')
    expect(rows(given)).toEqual([])
    expect(back?.holes.map(({ kind, diameterMm }) => [kind, diameterMm])).toEqual([['cable', 6]])
  })
})

it('a low wide box is laid out along its width', () => {
  const { sections } = outcome({
    ...pair,
    box: { ...pair.box!, outer: { widthMm: 300, heightMm: 110, depthMm: 160 } },
    drivers: [{ ...driver, count: 2 }],
  })
  const front = sections.panels.find(({ id }) => id === 'front')
  expect(front?.holes.filter(({ kind }) => kind === 'driver').map(({ yMm }) => yMm)).toEqual([55, 55])
})
