import { describe, expect, it } from 'vitest'
import { isRefusal } from '../../../src/core/outcome.ts'
import { cutList } from '../../../src/core/shop/cut-list.ts'
import type { Driver } from '../../../src/schema/driver.ts'

const THICKNESS_MM = 12
/** Wood wanted between holes: 8 mm or the board, whichever is more. Shop reference, section 6. */
const WEB_MM = 12

const woofer = (count: number): Driver => ({
  id: 'main',
  count,
  parameters: {},
  frame: { outerDiameterMm: 76, cutoutDiameterMm: 66, depthMm: 38 },
})
const tweeter: Driver = {
  id: 'high',
  parameters: {},
  frame: { outerDiameterMm: 50, cutoutDiameterMm: 40, depthMm: 20 },
}

function front(widthMm: number, heightMm: number, drivers: Driver[]) {
  const result = cutList(
    {
      box: { kind: 'closed', outer: { widthMm, heightMm, depthMm: 160 }, panelThicknessMm: THICKNESS_MM },
      drivers,
      stock: [],
    },
    { portLengthMm: null },
  )
  if (isRefusal(result)) throw new Error(JSON.stringify(result.faults))
  const panel = result.sections.panels.find(({ id }) => id === 'front')!
  return {
    holes: panel.holes.filter(({ kind }) => kind === 'driver'),
    codes: result.findings.map(({ code }) => code),
  }
}

/** Wood between two round holes, by their centres. */
function leastWoodMm(holes: ReturnType<typeof front>['holes']): number {
  const gaps = holes.flatMap((a, index) =>
    holes
      .slice(index + 1)
      .map((b) => Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm) - (a.diameterMm! + b.diameterMm!) / 2),
  )
  return Math.min(...gaps)
}

describe('drivers on a front', () => {
  it('stand in one column where it is long enough', () => {
    // 4 x 66 mm and five webs of 12 mm are 324 mm.
    const { holes, codes } = front(240, 350, [woofer(4)])
    expect(new Set(holes.map(({ xMm }) => xMm))).toEqual(new Set([120]))
    expect(codes).not.toContain('web-thin')
  })

  it('stand in two columns where one is too long', () => {
    // Above each other 4 x 66 mm and webs want 324 mm of 226; two and two want 2 x 66 + 3 x 12 = 168 mm.
    const { holes, codes } = front(240, 250, [woofer(4)])
    expect(holes).toHaveLength(4)
    expect(new Set(holes.map(({ xMm }) => xMm)).size).toBe(2)
    expect(new Set(holes.map(({ yMm }) => yMm)).size).toBe(2)
    // Left and right alike.
    expect(holes[0]!.xMm + holes[1]!.xMm).toBeCloseTo(240, 9)
    expect(leastWoodMm(holes)).toBeGreaterThanOrEqual(WEB_MM)
    expect(codes.filter((code) => /web|holes|hole-|flange/.test(code))).toEqual([])
  })

  it('of several kinds keep rows of their own, a single one in the middle', () => {
    const { holes } = front(240, 260, [woofer(3), tweeter])
    const of = (id: string) => holes.find((hole) => hole.id === id)!
    expect(of('high').xMm).toBe(120)
    expect(of('main 1').yMm).toBe(of('main 2').yMm)
    expect(of('main 3').xMm).toBe(120)
    expect(of('high').yMm).toBeGreaterThan(of('main 1').yMm)
    expect(of('main 1').yMm).toBeGreaterThan(of('main 3').yMm)
  })

  it('that fit in no number of columns are told as one column that is too long', () => {
    const { codes } = front(120, 250, [woofer(4)])
    expect(codes).toContain('holes-longer-than-front')
  })
})
