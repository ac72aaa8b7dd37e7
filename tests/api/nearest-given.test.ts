import { expect, it } from 'vitest'
import { nearestGiven } from '../../src/api/nearest-given.ts'

const request = {
  supply: { kind: 'adapter' },
  drivers: [{ id: 'main' }],
  wiring: 'main',
  'a/b~c': { d: null },
}

it.each([
  ['/supply/kind', '/supply/kind'],
  ['/supply/currentLimitA', '/supply'],
  ['/supply/cable/lengthM', '/supply'],
  ['/drivers/0/id', '/drivers/0/id'],
  ['/drivers/0/parameters/xmaxMm', '/drivers/0'],
  ['/drivers/3/id', '/drivers'],
  ['/drivers/length', '/drivers'],
  ['/wiring/series', '/wiring'],
  ['/signal', ''],
  ['/toString', ''],
  ['', ''],
  ['/a~1b~0c/d', '/a~1b~0c/d'],
  ['/a~1b~0c/d/e', '/a~1b~0c/d'],
])('%s is %s of what was given', (pointer, nearest) => {
  expect(nearestGiven(pointer, request)).toBe(nearest)
})
