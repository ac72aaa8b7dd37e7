import { describe, expect, it } from 'vitest'
import { isRefusal } from '../../../src/core/outcome.ts'
import { cutList } from '../../../src/core/shop/cut-list.ts'
import { box, laid, panel, request } from './small-box.ts'

describe('the volume control', () => {
  const control = { resistanceKohm: 50, bushLengthMm: 7, bodyDiameterMm: 24, shaftLengthMm: 12 }
  const result = laid({
    drivers: [{ ...request.drivers![0]!, count: 1 }],
    signal: { volumeControl: control },
  })
  it('goes into a pocket from inside that leaves the bush less its nut', () => {
    // 7 - 2.5 mm of 12 mm stay.
    expect(panel(result, 'front')?.holes.find(({ kind }) => kind === 'control')?.recess).toEqual({
      diameterMm: 25,
      depthMm: 7.5,
    })
  })
  it('with a body that reaches over a wall says so, where its size is given', () => {
    const said = (bodyDiameterMm: number, xMm: number) =>
      laid({
        drivers: [],
        box: { ...box, holes: [{ for: 'control', xMm, yMm: 120 }] },
        signal: { volumeControl: { ...control, bodyDiameterMm } },
      }).findings.find(({ code }) => code === 'hole-over-wall')
    // 22 mm from the edge are 10 mm from the wall.
    expect(said(20, 22)).toBeUndefined()
    expect(said(24, 22)).toMatchObject({ at: '/signal/volumeControl/bodyDiameterMm', value: 2 })
  })
  it('with too short a shaft says by how much', () => {
    const finding = result.findings.find(({ code }) => code === 'control-shaft-short')
    expect(finding).toMatchObject({ value: 7.5, limit: 8 })
  })
})

it('a bent tube needs its bend in depth, not its length', () => {
  const bent = (elbows: object) =>
    cutList(
      {
        ...request,
        box: { ...box, kind: 'vented' },
        drivers: [{ ...request.drivers![0]!, count: 1 }],
        port: { innerDiameterMm: 26, outerDiameterMm: 32, lengthMm: 200, ...elbows },
      },
      { portLengthMm: null },
    )
  const said = (elbows: object) => {
    const outcome = bent(elbows)
    return isRefusal(outcome) ? [] : outcome.findings.map(({ code }) => code)
  }
  expect(said({})).toContain('tube-hits-back')
  expect(said({ elbows: { count: 1 } })).not.toContain('tube-hits-back')
})
