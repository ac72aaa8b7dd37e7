import { describe, expect, it } from 'vitest'
import { USUAL_KERF_MM } from '../../../src/core/shop/cut-list-assumptions.ts'
import { bandedEdges, edgingPlan, stripEachMm } from '../../../src/core/shop/edging.ts'
import { smallestBoard } from '../../../src/core/shop/layout/smallest-board.ts'
import { boardMassKg, glueG } from '../../../src/core/shop/mass.ts'
import {
  coreMm,
  countersinkMm,
  deepestPilotMm,
  edgeScrews,
  jointScrewMm,
  leadBitMm,
  leadHoleMm,
  longestScrewMm,
  type Material,
  pilotDepthMm,
  thickestEdgeScrewMm,
} from '../../../src/core/shop/screws.ts'
import { checks, expectWithin } from '../../outside/checks.ts'

const rows = (topic: string, prefix: string) => {
  const found = checks('shop-checks.json', topic).filter(({ id }) => id.startsWith(prefix))
  if (found.length === 0) throw new Error(`no row ${prefix}`)
  return found
}

describe('screws', () => {
  it.each(rows('screws', 'lead-hole-'))('$id', (check) => {
    const { rootDiameterMm, material } = check.inputs
    expectWithin(check, 'leadHoleMm', leadHoleMm(rootDiameterMm, material as Material))
  })

  it.each(rows('screws', 'mdf-pilot-'))('$id', ({ inputs, expected }) => {
    const hole = leadHoleMm(inputs['rootDiameterMm'], 'mdf')
    expect(hole).toBeGreaterThanOrEqual(expected['leadHoleMm'][0])
    expect(hole).toBeLessThanOrEqual(expected['leadHoleMm'][1])
    expect(leadBitMm(inputs['rootDiameterMm'], 'mdf')).toBe(expected['bitMm'])
  })

  it.each(rows('screws', 'pilot-thin-screws'))('$id', (check) => {
    expectWithin(check, 'pilotMm', leadBitMm(coreMm(check.inputs['screwDiameterMm']), 'mdf'))
  })

  it.each(rows('screws', 'blind-').filter(({ id }) => !id.includes('length')))('$id', (check) => {
    expectWithin(check, 'deepestMm', deepestPilotMm(check.inputs['panelThicknessMm']))
  })

  it.each(rows('screws', 'blind-length-'))('$id', (check) => {
    const { panelThicknessMm, flangeThicknessMm, screwLengthsMm } = check.inputs
    const most = longestScrewMm(panelThicknessMm, flangeThicknessMm)
    const longest = screwLengthsMm.filter((length: number) => length <= most).at(-1) ?? null
    expectWithin(check, 'deepestPilotMm', deepestPilotMm(panelThicknessMm))
    expectWithin(check, 'deepestScrewMm', most - flangeThicknessMm)
    expect(longest).toBe(check.expected['longestScrewMm'])
  })

  it('a short screw gets a pilot 1 mm deeper than itself, not the deepest', () => {
    expect(pilotDepthMm(18, 10, 3)).toBe(8)
  })

  it.each(rows('screws', 'edge-screw-').filter(({ id }) => !id.includes('count')))('$id', (check) => {
    expectWithin(check, 'largestScrewMm', thickestEdgeScrewMm(check.inputs['panelThicknessMm']))
  })

  it.each(rows('screws', 'edge-screw-count-'))('$id', (check) => {
    expectWithin(check, 'screws', edgeScrews(check.inputs['edgeLengthMm']))
  })

  it.each(rows('screws', 'countersink'))('$id', (check) => {
    expectWithin(
      check,
      'depthMm',
      countersinkMm(check.inputs['headDiameterMm'], check.inputs['screwDiameterMm']),
    )
  })

  it.each(rows('screws', 'joint-screw-length'))('$id', (check) => {
    expectWithin(
      check,
      'lengthMm',
      jointScrewMm(check.inputs['outerPanelMm'], check.inputs['screwDiameterMm']),
    )
  })
})

describe('edging', () => {
  const strips = rows('edging', 'edging-').filter(({ inputs }) => inputs['stripWidthMm'] !== undefined)
  it.each(strips)('$id', (check) => {
    const { stripWidthMm, slitsInto, panelThicknessMm } = check.inputs
    const each = stripEachMm({ widthMm: stripWidthMm, slitsInto })
    expectWithin(check, 'stripEachMm', each)
    expectWithin(check, 'overhangEachSideMm', (each - panelThicknessMm) / 2)
    expect(each >= panelThicknessMm).toBe(check.expected['covers'])
  })

  it.each(rows('edging', 'edging-length-'))('$id', (check) => {
    const { edgesMm, overhangMm } = check.inputs
    expectWithin(check, 'lengthMm', edgingPlan({ widthMm: 22, overhangMm }, edgesMm).bandLengthMm)
  })

  it.each(rows('edging', 'edging-roll'))('$id', (check) => {
    const { edgesMm, overhangMm, slitsInto } = check.inputs
    const plan = edgingPlan({ widthMm: 22, overhangMm, slitsInto }, edgesMm)
    expectWithin(check, 'bandMm', plan.bandLengthMm)
    expectWithin(check, 'stripToBuyMm', plan.stripToBuyMm)
  })

  it('no edge of a box mitred all round shows its core', () => {
    const carcass = {
      outer: { widthMm: 120, heightMm: 240, depthMm: 160 },
      thicknessMm: 12,
      joint: 'mitre' as const,
      runsThrough: 'front-back' as const,
      rebateDepthMm: 0,
    }
    expect(bandedEdges(carcass, 'front', 'all')).toEqual([])
    expect(bandedEdges(carcass, 'side', 'all')).toEqual([])
    expect(bandedEdges({ ...carcass, joint: 'butt' }, 'front', 'front')).toHaveLength(4)
    expect(bandedEdges({ ...carcass, joint: 'butt' }, 'back', 'front')).toEqual([])
    expect(bandedEdges({ ...carcass, runsThrough: 'sides', joint: 'butt' }, 'side', 'all')).toHaveLength(4)
  })
})

it.each(rows('mass', 'mass-'))('$id', (check) => {
  const { areaM2, thicknessMm, densityKgPerM3 } = check.inputs
  expectWithin(check, 'massKg', boardMassKg(areaM2, thicknessMm, densityKgPerM3))
})

it.each(rows('adhesive', 'glue'))('$id', (check) => {
  expectWithin(check, 'glueG', glueG(check.inputs['jointLengthMm'], check.inputs['jointWidthMm']))
})

it.each([...rows('kerf', 'kerf-circular'), ...rows('kerf', 'kerf-table')])(
  '$id: the usual kerf is near it',
  (check) => {
    expectWithin(check, 'typicalMm', USUAL_KERF_MM)
  },
)

it.each(rows('kerf', 'kerf-row'))('$id', (check) => {
  const { partLengthMm, count, kerfMm, trimMm } = check.inputs
  // In the contract the trim is all that is lost at an edge, its own cut included: 5 mm and a kerf here. Parts this
  // wide lie in one row on the smallest board: 566 x 1014.8 is less than 150.8 x 4022 or 289.2 x 2017.2.
  const { lengthMm } = smallestBoard(
    { lengthMm: partLengthMm, widthMm: 1000 },
    count,
    kerfMm,
    trimMm + kerfMm,
  )
  expectWithin(check, 'boardNeededMm', lengthMm)
})
