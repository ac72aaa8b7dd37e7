import { describe, expect, it } from 'vitest'
import { USUAL_DIAMETER_MM } from '../../../src/core/power/indicator.ts'
import { boltPositions, usualFirstAngleDeg } from '../../../src/core/shop/bolt-circle.ts'
import { besideMm, column, columnMm } from '../../../src/core/shop/front-column.ts'
import { edgeGapMm, gapMm, narrowestWeb, type Opening } from '../../../src/core/shop/hole-gaps.ts'
import { chooseSaw, coverMm, landMm } from '../../../src/core/shop/hole-saw.ts'
import { behindMagnetMm, behindTubeMm, bushPocket, tubeInsideMm } from '../../../src/core/shop/inside-fit.ts'
import { checks, expectWithin } from '../../outside/checks.ts'

const rows = (topic: string, prefix: string) => {
  const found = checks('shop-checks.json', topic).filter(({ id }) => id.startsWith(prefix))
  if (found.length === 0) throw new Error(`no row ${prefix}`)
  return found
}

it.each(rows('holes', 'bolts-'))('$id', (check) => {
  const { boltCircleDiameterMm, boltCount, firstAngleDeg } = check.inputs
  const positions = boltPositions(boltCircleDiameterMm, boltCount, firstAngleDeg)
  expectWithin(
    check,
    'positionsMm',
    positions.map(({ xMm, yMm }) => [xMm, yMm]),
  )
})

it('four screws begin at 45 degrees', () => expect(usualFirstAngleDeg(4)).toBe(45))

describe('hole saws', () => {
  it.each(rows('holes', 'hole-saw-').filter(({ id }) => !id.includes('land')))(
    '$id',
    ({ inputs, expected }) => {
      const { sawMm, looseMm } = chooseSaw({ diameterMm: inputs['cutoutDiameterMm'] }, inputs['holeSawsMm'])
      expect(sawMm).toBe(expected['chooseMm'])
      if (expected['looseMm'] !== null) expect(looseMm).toBe(expected['looseMm'])
    },
  )

  it.each(rows('holes', 'hole-saw-land-'))('$id', (check) => {
    const { cutoutDiameterMm, boltCircleDiameterMm, pilotMm, flangeDiameterMm, holeSawsMm } = check.inputs
    const wanted = {
      diameterMm: cutoutDiameterMm,
      boltCircleMm: boltCircleDiameterMm,
      pilotMm,
      flangeMm: flangeDiameterMm,
    }
    const choice = chooseSaw(wanted, holeSawsMm)
    expectWithin(check, 'landWithItMm', landMm(wanted, check.expected['nextAboveMm']))
    expectWithin(check, 'coverWithItMm', coverMm(wanted, check.expected['nextAboveMm']))
    expectWithin(check, 'chooseMm', choice.sawMm)
    expectWithin(check, 'fileOutMm', choice.fileMm)
  })

  it.each(rows('holes', 'tube-hole-'))('$id', (check) => {
    const { tubeOuterDiameterMm, holeSawsMm } = check.inputs
    const { sawMm, looseMm } = chooseSaw({ diameterMm: tubeOuterDiameterMm }, holeSawsMm)
    expectWithin(check, 'chooseMm', sawMm)
    expectWithin(check, 'gapMm', looseMm / 2)
  })
})

it.each(rows('holes', 'indicator-hole'))('$id', (check) => expectWithin(check, 'holeMm', USUAL_DIAMETER_MM))

it.each(rows('holes', 'control-bush'))('$id', (check) => {
  const { leaveMm, pocketMm } = bushPocket(check.inputs['panelThicknessMm'], check.inputs['bushLengthMm'])
  expectWithin(check, 'leaveMm', leaveMm)
  expectWithin(check, 'pocketDepthMm', pocketMm)
})

describe('webs', () => {
  it.each(rows('layout', 'layout-'))('$id', (check) => {
    const { panelMm, panelThicknessMm, holes, leastWebMm } = check.inputs
    const [lengthMm, widthMm] = panelMm
    const openings: Opening[] = holes.map((hole: Pick<Opening, 'id' | 'xMm' | 'yMm' | 'diameterMm'>) => ({
      ...hole,
      slotWidthMm: null,
      slotHeightMm: null,
    }))
    const web = narrowestWeb(openings, lengthMm, widthMm)
    const innerMm = Math.min(
      ...openings
        .filter(({ id }) => id.startsWith('driver'))
        .map((hole) => edgeGapMm(hole, lengthMm, widthMm, panelThicknessMm)),
    )
    expectWithin(check, 'smallestWebMm', web?.webMm)
    expect(web?.between).toEqual(check.expected['between'])
    expectWithin(check, 'driverToInnerWallMm', innerMm)
    expect((web?.webMm ?? 0) >= leastWebMm && innerMm >= 0).toBe(check.expected['feasible'])
  })

  it('a slot is measured from its sides: 100 wide panel, slot 40 by 10 in the middle of 60', () => {
    const slot = { id: 'slot', xMm: 50, yMm: 30, diameterMm: null, slotWidthMm: 40, slotHeightMm: 10 }
    const hole = { id: 'hole', xMm: 50, yMm: 50, diameterMm: 10, slotWidthMm: null, slotHeightMm: null }
    expect(narrowestWeb([slot, hole], 100, 60)).toEqual({ webMm: 5, between: ['hole', 'edge'] })
    expect(edgeGapMm(slot, 100, 60)).toBe(25)
  })
})

describe('a column of holes', () => {
  const body = (alongMm: number, rimMm = 0) => ({
    alongMm,
    acrossMm: alongMm,
    rimMm,
    shelfMm: 0,
    clearMm: 0,
  })
  const ends = (firstMm: number, lastMm = firstMm) => ({ firstMm, lastMm })

  it.each(rows('layout', 'stack-height'))('$id', (check) => {
    const { holesMm, leastWebMm, panelThicknessMm } = check.inputs
    expectWithin(
      check,
      'leastHeightMm',
      columnMm(
        holesMm.map((hole: number) => body(hole)),
        leastWebMm,
        ends(leastWebMm),
      ) +
        2 * panelThicknessMm,
    )
  })

  it('spare room is spread evenly', () => {
    // 100 - 20 - 30 = 50 over three gaps of at least 8: 16.67 each.
    expect(column([body(20), body(30)], 100, 8, ends(8))).toEqual({
      centresMm: [50 / 3 + 10, 100 / 3 + 20 + 15].map((value) => expect.closeTo(value, 9)),
      shortMm: 0,
      overlapMm: 0,
    })
  })

  it('the ends give way before the webs between do', () => {
    expect(column([body(20), body(30)], 60, 8, ends(8))).toEqual({
      centresMm: [11, 44],
      shortMm: 14,
      overlapMm: 0,
    })
  })

  it('flanges need more than the web', () => {
    expect(columnMm([body(20, 6), body(20, 7)], 8, ends(8))).toBe(20 + 13 + 20 + 16)
  })

  it('ducts need their boards between them', () => {
    expect(
      columnMm(
        [
          { ...body(20), shelfMm: 12 },
          { ...body(20), shelfMm: 12 },
        ],
        8,
        ends(8),
      ),
    ).toBe(80)
  })

  it('room wanted to the wall is kept as long as the webs leave it', () => {
    const tube = { ...body(30), clearMm: 20 }
    // 100 - 50 = 50: 8 before, 8 between, 20 behind, and 14 to spare over three gaps.
    expect(column([body(20), tube], 100, 8, ends(8)).centresMm[1]).toBeCloseTo(100 - 20 - 14 / 3 - 15, 9)
    // 84 - 50 = 34: 8 and 8, and what is left, 18, behind the tube.
    expect(column([body(20), tube], 84, 8, ends(8)).centresMm).toEqual([18, 51])
    // A lamp of 3 with its web between tube and wall is part of the 20.
    expect(column([tube, body(3)], 80, 8, ends(8)).centresMm[1]).toBeLessThanOrEqual(80 - 9.5)
  })

  it('land at one end stays when the other gives way', () => {
    expect(column([body(20)], 24, 8, ends(8, 0)).centresMm).toEqual([14])
  })

  it('holes longer than the opening have no place', () => {
    expect(column([body(40), body(30)], 60, 8, ends(8))).toEqual({
      centresMm: [],
      shortMm: 34,
      overlapMm: 10,
    })
  })

  it('a small hole goes beside a port when webs stay on both sides', () => {
    const opening = { alongMm: 200, acrossMm: 96, marginMm: 12 }
    // Strip of 32 beside a port of 32: 7 hole, 12 web, 13 spare shared out.
    expect(besideMm(body(32), 7, opening, 12)).toBe(16 + 12 + 6.5 + 3.5)
    expect(besideMm(body(90), 7, opening, 12)).toBeNull()
  })
})

describe('inside', () => {
  it.each(rows('layout', 'driver-depth'))('$id', (check) => {
    const { outerDepthMm, panelThicknessMm, driverDepthMm } = check.inputs
    expectWithin(check, 'behindMagnetMm', behindMagnetMm(outerDepthMm, panelThicknessMm, driverDepthMm))
  })

  it.each(rows('layout', 'port-clearance'))('$id', (check) => {
    const { outerDepthMm, panelThicknessMm, tubeLengthMm } = check.inputs
    expectWithin(check, 'insideLengthMm', tubeInsideMm(tubeLengthMm, panelThicknessMm))
    expectWithin(check, 'behindTubeMm', behindTubeMm(outerDepthMm, panelThicknessMm, tubeLengthMm))
  })

  it.each(rows('layout', 'magnet-to-magnet'))('$id', (check) => {
    const { driverCentresMm, magnetDiameterMm, tubeCentreMm, tubeOuterDiameterMm } = check.inputs
    const round = ([xMm, yMm]: number[], diameterMm: number): Opening => ({
      id: '',
      xMm: xMm!,
      yMm: yMm!,
      diameterMm,
      slotWidthMm: null,
      slotHeightMm: null,
    })
    const [first, second] = driverCentresMm.map((centre: number[]) => round(centre, magnetDiameterMm))
    expectWithin(check, 'magnetGapMm', gapMm(first, second))
    expectWithin(check, 'tubeGapMm', gapMm(second, round(tubeCentreMm, tubeOuterDiameterMm)))
  })
})
