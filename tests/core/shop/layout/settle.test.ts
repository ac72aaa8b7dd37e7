import { expect, it } from 'vitest'
import { jobsOf } from '../../../../src/core/shop/layout/job.ts'
import type { Sheet } from '../../../../src/core/shop/layout/packing.ts'
import { settled } from '../../../../src/core/shop/layout/settle.ts'

it('lays the emptiest board anew so that its largest offcut grows, and leaves the fuller one', () => {
  const [job] = jobsOf(
    [
      { lengthMm: 900, widthMm: 500 },
      { lengthMm: 400, widthMm: 300 },
    ],
    [{ lengthMm: 1000, widthMm: 600, count: 2 }],
    0,
  )
  const sheet = (piece: number, freeMm2: number): Sheet => ({
    board: 0,
    pieces: [piece],
    xUm: [0],
    yUm: [0],
    turned: [false],
    usedUm2: job!.areaUm2[piece]!,
    freeUm2: freeMm2 * 1e6,
  })
  // Sawn across first, 600 x 600 mm stay of the emptier board, along first 1000 x 300, turned 700 x 600.
  const packing = settled(job!, { sheets: [sheet(0, 0), sheet(1, 300_000)], left: [] })
  expect(packing.sheets[0]?.freeUm2).toBe(0)
  expect(packing.sheets[1]?.freeUm2).toBe(420_000e6)
})
