import { describe, expect, it } from 'vitest'
import { frameFaults, radiatorFrameFaults } from '../../../src/core/shop/frame-faults.ts'
import type { DriverFrame } from '../../../src/schema/driver.ts'

/** A frame just inside every limit, as geometry sets them: a magnet that fills its hole is one. */
const frame: DriverFrame = {
  outerDiameterMm: 76,
  cutoutDiameterMm: 66,
  boltCircleDiameterMm: 71,
  depthMm: 38,
  flangeThicknessMm: 3,
  magnetDiameterMm: 66,
}
// A circle of 76 mm has 45.365 cm2.
const faults = (change: Partial<DriverFrame>, sdCm2 = 45.36) =>
  frameFaults([
    { id: 'bare', parameters: { sdCm2: 3000 } },
    { id: 'main', parameters: { sdCm2 }, frame: { ...frame, ...change } },
  ]).map(({ at }) => at)

it('a frame that can be has no fault, nor has a driver without one', () => {
  expect(faults({})).toEqual([])
})

describe('a frame that cannot be', () => {
  const at = (field: string) => `/drivers/1/frame/${field}`
  it.each<[string, Partial<DriverFrame>, string[]]>([
    [
      'cut-out as large as the flange',
      { cutoutDiameterMm: 76, boltCircleDiameterMm: 77 },
      [at('cutoutDiameterMm'), at('boltCircleDiameterMm')],
    ],
    ['screws on the rim of the cut-out', { boltCircleDiameterMm: 66 }, [at('boltCircleDiameterMm')]],
    ['screws on the rim of the flange', { boltCircleDiameterMm: 76 }, [at('boltCircleDiameterMm')]],
    ['magnet larger than its hole', { magnetDiameterMm: 66.1 }, [at('magnetDiameterMm')]],
    ['flange as thick as the driver is deep', { flangeThicknessMm: 38 }, [at('flangeThicknessMm')]],
  ])('%s', (_, change, expected) => {
    expect(faults(change)).toEqual(expected)
  })

  it('a cone larger than its flange', () => {
    expect(faults({}, 45.37)).toEqual(['/drivers/1/parameters/sdCm2'])
  })
})

it('the frame of a passive radiator is held to the same', () => {
  const radiator = { fsHz: 40, qms: 8, vasL: 2, sdCm2: 30 }
  const at = (change: Partial<DriverFrame>) =>
    radiatorFrameFaults({ ...radiator, frame: { ...frame, ...change } }).map((fault) => fault.at)
  expect(at({})).toEqual([])
  expect(at({ flangeThicknessMm: 38 })).toEqual(['/passiveRadiator/frame/flangeThicknessMm'])
  expect(radiatorFrameFaults(radiator)).toEqual([])
})
