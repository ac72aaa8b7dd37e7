import { describe, expect, it } from 'vitest'
import { isRefusal } from '../../../src/core/outcome.ts'
import { cutList } from '../../../src/core/shop/cut-list.ts'
import type { CutListRequest } from '../../../src/schema/cut-list.ts'
import type { Port } from '../../../src/schema/port.ts'

const THICKNESS_MM = 12

/** One small driver and some ports in a box of 12 mm board. */
function front(
  outer: { widthMm: number; heightMm: number },
  port: Port,
  change: Partial<CutListRequest> = {},
) {
  const request: CutListRequest = {
    box: { kind: 'vented', outer: { ...outer, depthMm: 200 }, panelThicknessMm: THICKNESS_MM },
    drivers: [
      { id: 'main', parameters: {}, frame: { outerDiameterMm: 76, cutoutDiameterMm: 66, depthMm: 38 } },
    ],
    port,
    stock: [],
    ...change,
  }
  const result = cutList(request, { portLengthMm: 60 })
  if (isRefusal(result)) throw new Error(JSON.stringify(result.faults))
  const panel = result.sections.panels.find(({ id }) => id === 'front')!
  const ports = panel.holes.filter(({ kind }) => kind === 'port')
  /** Room of each port to the nearest inner wall. */
  const toWalls = ports.map(
    ({ xMm, yMm, diameterMm }) =>
      Math.min(xMm, yMm, outer.widthMm - xMm, outer.heightMm - yMm) - THICKNESS_MM - (diameterMm ?? 0) / 2,
  )
  return { ports, toWalls, panel, codes: result.findings.map(({ code }) => code) }
}

const tubes: Port = { count: 2, innerDiameterMm: 26, outerDiameterMm: 32, lengthMm: 60 }

describe('several round ports', () => {
  it('two that the width takes lie side by side, two inner diameters apart, away from every wall', () => {
    // 176 mm inside: 32 + 52 + 2 x 13 = 110 fits.
    const { ports, toWalls, codes } = front({ widthMm: 200, heightMm: 240 }, tubes)
    expect(ports[0]!.yMm).toBe(ports[1]!.yMm)
    expect(ports[1]!.xMm - ports[0]!.xMm).toBeCloseTo(52, 9)
    expect(ports[0]!.xMm + ports[1]!.xMm).toBeCloseTo(200, 9)
    for (const room of toWalls) expect(room).toBeGreaterThanOrEqual(13)
    expect(codes).not.toContain('tube-near-side')
  })

  it('the spacing asked for is kept', () => {
    const { ports } = front({ widthMm: 200, heightMm: 240 }, { ...tubes, spacingMm: 60 })
    expect(ports[1]!.xMm - ports[0]!.xMm).toBeCloseTo(60, 9)
  })

  it('they move together, but not nearer than a web, where the width wants it', () => {
    // 106 mm inside: 106 - 26 - 32 = 48 between the centres; at 96 mm a web of 12 leaves 10 mm to each wall.
    expect(front({ widthMm: 130, heightMm: 170 }, tubes).ports.map(({ xMm }) => xMm)).toEqual([41, 89])
    const tight = front({ widthMm: 120, heightMm: 170 }, tubes)
    expect(tight.ports.map(({ xMm }) => xMm)).toEqual([38, 82])
    expect(tight.toWalls[0]).toBeCloseTo(10, 9)
    expect(tight.codes).toContain('tube-near-side')
  })

  it('too narrow a box has them above each other, and off the floor', () => {
    const { ports, toWalls, codes } = front({ widthMm: 100, heightMm: 260 }, tubes)
    expect(ports.map(({ xMm }) => xMm)).toEqual([50, 50])
    for (const room of toWalls) expect(room).toBeGreaterThanOrEqual(13)
    expect(codes).not.toContain('tube-near-side')
  })

  it('four where the width takes two make two rows', () => {
    const { ports } = front({ widthMm: 140, heightMm: 300 }, { ...tubes, count: 4 })
    expect(new Set(ports.map(({ xMm }) => xMm)).size).toBe(2)
    expect(new Set(ports.map(({ yMm }) => yMm)).size).toBe(2)
  })

  it('a box that lies has them one after the other', () => {
    const { ports, toWalls } = front({ widthMm: 320, heightMm: 120 }, tubes)
    expect(ports.map(({ yMm }) => yMm)).toEqual([60, 60])
    for (const room of toWalls) expect(room).toBeGreaterThanOrEqual(13)
  })

  it('a hole sawn too large keeps its web all the same', () => {
    const workshop = { holeSawsMm: [38, 66] }
    const { ports } = front({ widthMm: 200, heightMm: 240 }, { ...tubes, spacingMm: 33 }, { workshop })
    expect(ports[0]!.diameterMm).toBe(38)
    expect(ports[1]!.xMm - ports[0]!.xMm).toBeCloseTo(38 + 12, 9)
  })
})

it('a front made longer by what the finding asks has no thin web any more', () => {
  const drivers = [
    {
      id: 'main',
      count: 2,
      parameters: {},
      frame: { outerDiameterMm: 76, cutoutDiameterMm: 66, depthMm: 38 },
    },
  ]
  const tube = { ...tubes, count: 1 }
  // 66 + 66 + 32 and four webs of 12 are 212 mm between the walls.
  expect(front({ widthMm: 120, heightMm: 200 }, tube, { drivers }).codes).toContain('web-thin')
  expect(front({ widthMm: 120, heightMm: 236 }, tube, { drivers }).codes).not.toContain('web-thin')
})
