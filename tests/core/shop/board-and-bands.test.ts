import { describe, expect, it } from 'vitest'
import { isRefusal } from '../../../src/core/outcome.ts'
import { cutList } from '../../../src/core/shop/cut-list.ts'
import { box, codes, laid, panel, request, withBox } from './small-box.ts'

describe('bands', () => {
  const edging = { widthMm: 22, edges: 'all' as const, thicknessMm: 0.5, rollLengthM: 2.5 }
  const result = laid({ workshop: { kerfMm: 2.4, edging } })
  it('come off the saw size of the panel, which is what is laid out', () => {
    const front = panel(result, 'front')!
    expect([front.sawLengthMm, front.sawWidthMm]).toEqual([front.lengthMm - 1, front.widthMm - 1])
    const part = result.sections.sheets.flatMap(({ parts }) => parts).find(({ id }) => id === 'front')
    expect([part?.lengthMm, part?.widthMm]).toEqual([front.sawLengthMm, front.sawWidthMm])
  })
  it('that leave nothing to saw of a panel are refused, panel by panel', () => {
    // Front and back of 18 x 40 mm: two bands of 10 mm are wider than 18 mm.
    const result = cutList(
      {
        box: { kind: 'closed', outer: { widthMm: 18, heightMm: 40, depthMm: 40 }, panelThicknessMm: 6 },
        stock: [{ lengthMm: 800, widthMm: 400, thicknessMm: 6 }],
        workshop: { edging: { widthMm: 22, thicknessMm: 10, edges: 'all' } },
      },
      { portLengthMm: null },
    )
    expect(isRefusal(result) ? result.faults : []).toMatchObject([
      { at: '/workshop/edging/thicknessMm', message: expect.stringContaining('front') },
      { at: '/workshop/edging/thicknessMm', message: expect.stringContaining('back') },
    ])
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

describe('the grain of what is seen', () => {
  it('runs one way round the box, and so do the parts on the board', () => {
    const result = withBox({ grain: 'upright' })
    const grains = Object.fromEntries(result.sections.panels.map(({ id, grain }) => [id, grain]))
    // Front and back are as long as the box is wide; sides as long as it is high; top and bottom as it is wide.
    expect(grains).toMatchObject({ front: 'width', back: 'width', side: 'length', 'top-bottom': 'length' })
    const stock = [{ ...request.stock[0]!, grain: 'length' as const }]
    const turned = laid({ stock, box: { ...box, grain: 'upright' } })
      .sections.sheets.flatMap(({ parts }) => parts)
      .map(({ id, turned }) => `${id} ${turned}`)
    expect(new Set(turned)).toEqual(new Set(['front true', 'back true', 'side false', 'top-bottom false']))
  })
})
