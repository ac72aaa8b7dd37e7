import { expect, it } from 'vitest'
import { comesApart } from './sheet-faults.ts'

// Five pieces around a middle one: the known smallest arrangement that no cut from edge to edge takes apart.
const pinwheel = [
  { x: 0, y: 0, length: 2, width: 1 },
  { x: 2, y: 0, length: 1, width: 2 },
  { x: 1, y: 2, length: 2, width: 1 },
  { x: 0, y: 1, length: 1, width: 2 },
]

it('the judge of the tests below sees what a saw cannot part', () => {
  expect(comesApart(pinwheel)).toBe(false)
  expect(comesApart(pinwheel.slice(1))).toBe(true)
})
