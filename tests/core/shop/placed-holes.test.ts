import { describe, expect, it } from 'vitest'
import { codes, faults, laid, panel, withBox } from './small-box.ts'

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
    const thin = result.findings.find(({ code }) => code === 'web-breaks')
    expect(thin?.value).toBeCloseTo(2, 9)
    expect(thin?.remedies[0]).toBe('Move main 1 and main 2 apart.')
  })
  it('must clear the walls behind the front, 12 mm inside its edge', () => {
    const over = withBox({ holes: [{ for: 'main 1', xMm: 40, yMm: 180 }] })
    // 40 - 33 = 7 mm from the edge, 5 mm over the side.
    const finding = over.findings.find(({ code }) => code === 'hole-over-wall')
    expect(finding).toMatchObject({ severity: 'blocker', at: '/box/holes/0' })
    expect(finding?.value).toBeCloseTo(5, 9)
    expect(codes(laid({}))).not.toContain('hole-over-wall')
  })
  it('beyond the edge of the panel are said to be there, not to leave less than no wood', () => {
    const over = withBox({ holes: [{ for: 'main 1', xMm: 20, yMm: 180 }] })
    // 20 - 33 mm.
    const finding = over.findings.find(({ code }) => code === 'web-breaks')
    expect(finding?.message).toBe('The hole of main 1 runs 13 mm over the edge of the panel.')
  })
  it('may be those of the back', () => {
    const holes = [{ for: 'cable', xMm: 30, yMm: 40 }]
    expect(panel(withBox({ holes }), 'back')?.holes).toMatchObject([{ kind: 'cable', xMm: 30, yMm: 40 }])
  })
  it('of the back leave wood to its edge, even the hole for the lead by itself', () => {
    // Inset between the sides, the back has no wall behind its rim: 5 - 4 = 1 mm of wood.
    const result = withBox({ runsThrough: 'sides', holes: [{ for: 'cable', xMm: 5, yMm: 100 }] })
    const finding = result.findings.find(({ code }) => code === 'back-web-breaks')
    expect(finding).toMatchObject({ severity: 'blocker' })
    expect(finding?.value).toBeCloseTo(1, 9)
    expect(codes(withBox({ runsThrough: 'sides' }))).not.toContain('back-web-thin')
  })
  it('must be known by name', () => {
    expect(faults({ holes: [{ for: 'mian 1', xMm: 1, yMm: 1 }] })).toEqual([
      { at: '/box/holes/0/for', message: expect.stringContaining('"main 1"') },
    ])
    expect(faults({ holes: [{ for: 'chimney', xMm: 1, yMm: 1 }] })[0]?.message).toMatch(
      /^no hole is called "chimney"\. There are main 1, /,
    )
  })
})
