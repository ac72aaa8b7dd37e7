import { expect, it } from 'vitest'
import { REFERENCE_AIR } from '../../../src/core/air.ts'
import { driverBodyL, portBodyL } from '../../../src/core/box/bodies.ts'
import { enclosure } from '../../../src/core/box/enclosure.ts'
import { innerOf, outerOf, volumeL } from '../../../src/core/box/sides.ts'
import type { Box } from '../../../src/schema/box.ts'

const BOX: Box = {
  kind: 'vented',
  outer: { widthMm: 120, heightMm: 240, depthMm: 160 },
  panelThicknessMm: 12,
}
const FRAME = { outerDiameterMm: 76, cutoutDiameterMm: 66, depthMm: 38, displacementL: 0.05 }

const faultsOf = (box: Box) => {
  const result = enclosure(box, [], undefined, REFERENCE_AIR, 1)
  return 'faults' in result ? result.faults.map((fault) => fault.at) : []
}

it('inner sides are outer ones less two boards: 96 by 216 by 136, 2.820 litres', () => {
  // Geometry, evaluated by hand.
  expect(innerOf({ widthMm: 120, heightMm: 240, depthMm: 160 }, 12)).toEqual({
    widthMm: 96,
    heightMm: 216,
    depthMm: 136,
  })
  expect(volumeL({ widthMm: 96, heightMm: 216, depthMm: 136 })).toBeCloseTo(2.8201, 4)
  expect(outerOf({ widthMm: 96, heightMm: 216, depthMm: 136 }, 12)).toEqual({
    widthMm: 120,
    heightMm: 240,
    depthMm: 160,
  })
})

it('takes off drivers and the tube whose length depends on what is left', () => {
  const port = { innerDiameterMm: 26, outerDiameterMm: 32, tuningHz: 95 }
  const result = enclosure(BOX, [{ at: '/drivers/0', count: 2, frame: FRAME }], port, REFERENCE_AIR, 1)
  if ('faults' in result) throw new Error('refused')
  const length = result.port?.lengthMm ?? 0
  // Self-consistent: gross − 2 · 0.05 − tube behind the panel, π/4 · 32² · (L − 12).
  const tube = (Math.PI / 4) * 32 * 32 * (length - 12) * 1e-6
  expect(result.netVolumeL).toBeCloseTo(2.820096 - 0.1 - tube, 9)
  expect(result.assumptions).toEqual([])
})

it('a body without data is a third of its cylinder, said openly', () => {
  const { displacementL: _, ...bare } = FRAME
  expect(driverBodyL(bare).volumeL).toBeCloseTo(((Math.PI / 4) * 66 * 66 * 38 * 1e-6) / 3, 12)
  const result = enclosure(
    { ...BOX, kind: 'closed' },
    [{ at: '/drivers/0', count: 1, frame: bare }],
    undefined,
    REFERENCE_AIR,
    1,
  )
  expect('faults' in result ? [] : result.assumptions.map((row) => row.at)).toEqual([
    '/drivers/0/frame/displacementL',
  ])
})

it('a tube of 32 mm with 60 mm inside takes 0.048 litres', () => {
  expect(portBodyL({ innerDiameterMm: 26, outerDiameterMm: 32 }, 72, 12, 96)).toBeCloseTo(
    Math.PI * 16 * 16 * 60 * 1e-6,
    12,
  )
})

// 60 mm behind a front of 12 mm, a slot of 60 x 15 mm in a box 96 mm wide inside: what stands in the air, by hand.
it.each([
  ['from wall to wall on the floor: 96 x (15 + 12)', 96, true, 96, 96 * 27],
  ['from wall to wall, free: 96 x (15 + 24)', 96, false, 96, 96 * 39],
  ['narrower on the floor: cheeks make it (60 + 24) x 27', 60, true, 96, 84 * 27],
  ['narrower, free: (60 + 24) x 39', 60, false, 96, 84 * 39],
  ['no room for cheeks in 11.5 mm', 73, true, 96, 73 * 27],
  ['width unknown: no cheeks', 60, true, null, 60 * 27],
])('a slot %s', (_, widthMm, onWall, innerWidthMm, sectionMm2) => {
  const port = { slot: { widthMm, heightMm: 15, onWall } }
  expect(portBodyL(port, 72, 12, innerWidthMm)).toBeCloseTo(sectionMm2 * 60 * 1e-6, 12)
})

it('takes off the cheeks and both shelves of a free slot: 2.820096 - 84 x 39 x 60 mm3', () => {
  const port = { slot: { widthMm: 60, heightMm: 15, onWall: false }, lengthMm: 72 }
  const result = enclosure(BOX, [], port, REFERENCE_AIR, 1)
  expect('faults' in result ? 0 : result.netVolumeL).toBeCloseTo(2.820096 - 0.19656, 9)
})

it.each([
  ['no size at all', { kind: 'closed' }, ['/box/outer']],
  ['outer and inner', { ...BOX, inner: { widthMm: 96, heightMm: 216, depthMm: 136 } }, ['/box/inner']],
  [
    'outer without a board',
    { kind: 'closed', outer: { widthMm: 120, heightMm: 240, depthMm: 160 } },
    ['/box/panelThicknessMm'],
  ],
  ['panels thicker than the box', { ...BOX, panelThicknessMm: 60 }, ['/box/outer/widthMm']],
  ['more air than fits', { ...BOX, netVolumeL: 5 }, ['/box/netVolumeL']],
] satisfies [string, Box, string[]][])('refuses %s', (_, box, at) => {
  expect(faultsOf(box)).toEqual(at)
})

it('refuses a box that its drivers fill', () => {
  const big = { ...FRAME, displacementL: 3 }
  const result = enclosure(
    { ...BOX, kind: 'closed' },
    [{ at: '/drivers/0', count: 1, frame: big }],
    undefined,
    REFERENCE_AIR,
    1,
  )
  expect('faults' in result && result.faults[0]?.at).toBe('/box/outer')
})
