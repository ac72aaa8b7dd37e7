import { describe, expect, it } from 'vitest'
import { sizedBy, sizeWayOf, tubeBy, tubeWayOf } from '../../src/kiosk/browser/box-way.ts'
import { type Draft, valueAt, withValue } from '../../src/kiosk/browser/draft.ts'

/** The size in another way, where it can be given so. */
function sized(...given: Parameters<typeof sizedBy>): Draft {
  const draft = sizedBy(...given)
  if (draft === undefined) throw new Error('cannot be given in another way')
  return draft
}

const sides = { widthMm: 120, heightMm: 240, depthMm: 160 }
const outer: Draft = { box: { outer: sides, panelThicknessMm: 12 } }

describe('another way to give the size', () => {
  const inner = sized(outer, 'inner', [])
  const volume = sized(outer, 'netVolumeL', [])

  it('keeps the box as it is: walls come off, and the volume is that of the sides', () => {
    expect(valueAt(inner, '/box')).toEqual({
      panelThicknessMm: 12,
      inner: { widthMm: 96, heightMm: 216, depthMm: 136 },
    })
    // 0.96 dm × 2.16 dm × 1.36 dm
    expect(valueAt(volume, '/box/netVolumeL')).toBeCloseTo(2.82, 2)
    expect(valueAt(sized(volume, 'outer', []), '/box/outer')).toEqual(sides)
  })

  it('reads sides with units', () => {
    const written = withValue(outer, '/box/outer', { widthMm: '12 cm', heightMm: 240, depthMm: '160 mm' })
    expect(sized(written, 'inner', [])).toEqual(inner)
  })

  // By hand: 1 in = 25.4 mm exactly (NIST SP 811, appendix B.8); inner = outer less two boards.
  it.each([
    [{ widthMm: '6 1/4 in', heightMm: '10 in', depthMm: '8-1/4 in' }, '1/2 in', [133, 229, 184]],
    [{ widthMm: '6 1/4"', heightMm: '10"', depthMm: '8.25″' }, '0.5 in', [133, 229, 184]],
    [{ widthMm: '0.2 m', heightMm: '30,5 cm', depthMm: 200 }, 12, [176, 281, 176]],
  ])(
    'reads sides as people write them: %o of %s',
    (outer, panelThicknessMm, [widthMm, heightMm, depthMm]) => {
      const inner = sized({ box: { outer, panelThicknessMm } }, 'inner', [])
      expect(valueAt(inner, '/box/inner')).toEqual({ widthMm, heightMm, depthMm })
      const outside = valueAt(sized(inner, 'outer', []), '/box/outer/widthMm')
      expect(Math.abs(Number(outside) - (widthMm ?? 0) - (panelThicknessMm === 12 ? 24 : 25.4))).toBeLessThan(
        0.6,
      )
    },
  )

  it('reads a volume in each unit on offer', () => {
    const widthOf = (netVolumeL: string | number) =>
      valueAt(sized({ box: { netVolumeL, panelThicknessMm: 12 } }, 'inner', []), '/box/inner/widthMm')
    // 9 L in the proportions 1 : 1.6 : 1.25 are cbrt(9e6 / 2) mm wide; one cubic foot is 28.316846592 L (SP 811).
    expect(widthOf(9)).toBe(165)
    expect(widthOf('9000 mL')).toBe(165)
    expect(widthOf('1 ft^3')).toBe(Math.round(Math.cbrt(28.316846592e6 / 2)))
  })

  it.each([
    ['a side that cannot be read', { outer: { ...sides, widthMm: 'wide' }, panelThicknessMm: 12 }],
    ['a unit of nothing here', { outer: { ...sides, widthMm: '3 kg' }, panelThicknessMm: 12 }],
    ['thousands or thousandths', { outer: { ...sides, widthMm: '1,250' }, panelThicknessMm: 12 }],
    ['nothing as a divisor', { outer: { ...sides, widthMm: '1/0 in' }, panelThicknessMm: 12 }],
    ['a side that is missing', { outer: { widthMm: 120 }, panelThicknessMm: 12 }],
    ['no thickness of the board', { outer: sides }],
    ['walls that leave no room', { outer: sides, panelThicknessMm: 60 }],
  ])('does not guess at %s', (_name, box) => {
    expect(sizedBy({ box }, 'inner', [])).toBeUndefined()
  })

  it('does not leave the walls out where their thickness is unknown', () => {
    expect(sizedBy({ box: { netVolumeL: 9, panelThicknessMm: 'thin' } }, 'outer', [])).toBeUndefined()
  })

  it('and back gives the very same measures, also all the way round', () => {
    expect(sized(volume, 'outer', [outer])).toEqual(outer)
    const round = sized(inner, 'netVolumeL', [outer])
    expect(valueAt(sized(round, 'outer', [outer, inner]), '/box/outer')).toEqual(sides)
  })

  it('and back after something was typed goes by that', () => {
    const wider = withValue(inner, '/box/inner/widthMm', 106)
    expect(valueAt(sized(wider, 'outer', [outer, inner]), '/box/outer/widthMm')).toBe(130)
  })

  it('begins with a box where nothing is known', () => {
    const empty = sized({ box: {} }, 'inner', [])
    expect(valueAt(empty, '/box/inner/widthMm')).toBeGreaterThan(50)
    expect(valueAt(empty, '/box/outer')).toBeUndefined()
  })

  it('stays chosen when its last measure is emptied', () => {
    const emptied = { box: { panelThicknessMm: 12 } }
    expect(sizeWayOf(emptied, [outer])).toBe('outer')
    expect(sizeWayOf(emptied)).toBe('netVolumeL')
    expect(sized(emptied, 'outer', [outer])).toEqual(emptied)
  })
})

describe('tuning or length of the tube', () => {
  const tuned = { port: { innerDiameterMm: 35, tuningHz: 99 } }
  const long = tubeBy(tuned, 'lengthMm', [])

  it('comes back as it was', () => {
    expect(long).toMatchObject({ port: { lengthMm: expect.any(Number) } })
    expect(tubeBy(long, 'tuningHz', [tuned])).toEqual(tuned)
  })

  it('stays chosen when it is emptied', () => {
    const emptied = { port: { innerDiameterMm: 35 } }
    expect(tubeWayOf(emptied, [long])).toBe('lengthMm')
    expect(tubeWayOf(emptied)).toBe('tuningHz')
  })
})
