import { describe, expect, it } from 'vitest'
import { sizedBy, sizeWayOf, tubeBy, tubeWayOf } from '../../src/kiosk/browser/box-way.ts'
import { type Draft, valueAt, withValue } from '../../src/kiosk/browser/draft.ts'

const sides = { widthMm: 120, heightMm: 240, depthMm: 160 }
const outer: Draft = { box: { outer: sides, panelThicknessMm: 12 } }

describe('another way to give the size', () => {
  const inner = sizedBy(outer, 'inner', [])
  const volume = sizedBy(outer, 'netVolumeL', [])

  it('keeps the box as it is: walls come off, and the volume is that of the sides', () => {
    expect(valueAt(inner, '/box')).toEqual({
      panelThicknessMm: 12,
      inner: { widthMm: 96, heightMm: 216, depthMm: 136 },
    })
    // 0.96 dm × 2.16 dm × 1.36 dm
    expect(valueAt(volume, '/box/netVolumeL')).toBeCloseTo(2.82, 2)
    expect(valueAt(sizedBy(volume, 'outer', []), '/box/outer')).toEqual(sides)
  })

  it('reads sides with units', () => {
    const written = withValue(outer, '/box/outer', { widthMm: '12 cm', heightMm: 240, depthMm: '160 mm' })
    expect(sizedBy(written, 'inner', [])).toEqual(inner)
  })

  it('and back gives the very same measures, also all the way round', () => {
    expect(sizedBy(volume, 'outer', [outer])).toEqual(outer)
    const round = sizedBy(inner, 'netVolumeL', [outer])
    expect(valueAt(sizedBy(round, 'outer', [outer, inner]), '/box/outer')).toEqual(sides)
  })

  it('and back after something was typed goes by that', () => {
    const wider = withValue(inner, '/box/inner/widthMm', 106)
    expect(valueAt(sizedBy(wider, 'outer', [outer, inner]), '/box/outer/widthMm')).toBe(130)
  })

  it('begins with a box where nothing is known', () => {
    const empty = sizedBy({ box: { outer: { widthMm: 'wide' } } }, 'inner', [])
    expect(valueAt(empty, '/box/inner/widthMm')).toBeGreaterThan(50)
    expect(valueAt(empty, '/box/outer')).toBeUndefined()
  })

  it('stays chosen when its last measure is emptied', () => {
    const emptied = { box: { panelThicknessMm: 12 } }
    expect(sizeWayOf(emptied, [outer])).toBe('outer')
    expect(sizeWayOf(emptied)).toBe('netVolumeL')
    expect(sizedBy(emptied, 'outer', [outer])).toEqual(emptied)
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
