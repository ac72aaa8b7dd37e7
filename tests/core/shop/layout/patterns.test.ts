import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { type Job, jobsOf } from '../../../../src/core/shop/layout/job.ts'
import { type Packing, scoreOf } from '../../../../src/core/shop/layout/packing.ts'
import { byPatterns } from '../../../../src/core/shop/layout/patterns.ts'
import { randomFrom } from '../../../../src/core/shop/layout/random.ts'
import { sheetFaults } from './sheet-faults.ts'

const SEED = 1951

interface CuttingStock {
  id: string
  stock: [number, number, number][]
  parts: [number, number, number][]
  bestCost: number
}

const published: CuttingStock[] = JSON.parse(
  readFileSync(new URL('../../../outside/cutting/cutting-stock.json', import.meta.url), 'utf8'),
)

const nothing = (job: Job): Packing => ({ sheets: [], left: [...job.partOf.keys()] })

/** Everything wrong with a packing: each piece once, boards within what is on hand, every sheet to be sawn. */
function faults(job: Job, { sheets, left }: Packing): string[] {
  const found = [...sheets.flatMap(({ pieces }) => pieces), ...left].sort((a, b) => a - b)
  return [
    ...(found.join() === [...job.partOf.keys()].join() ? [] : ['not every piece once']),
    ...job.boards.flatMap(({ count }, kind) => {
      const taken = sheets.filter(({ board }) => board === kind).length
      return taken <= count ? [] : [`${taken} boards of ${count}`]
    }),
    ...sheets.flatMap((sheet) => sheetFaults(job, sheet)),
  ]
}

function only(jobs: Job[]): Job {
  const [job] = jobs
  if (job === undefined || jobs.length > 1) throw new Error('not one job')
  return job
}

describe('boards that repeat', () => {
  it('lays 60 and 40 on every board of 100, by pencil the only way to need 30 boards', () => {
    const strip = (lengthMm: number) => ({ lengthMm, widthMm: 10, count: 30 })
    const job = only(jobsOf([strip(60), strip(40)], [{ lengthMm: 100, widthMm: 10, count: 99 }], 0))
    const packing = byPatterns(job, nothing(job), 1e6, SEED, 0)
    expect(faults(job, packing)).toEqual([])
    expect(packing.sheets).toHaveLength(30)
  })

  it('takes no more boards than there are, and says what is left', () => {
    const job = only(
      jobsOf([{ lengthMm: 60, widthMm: 10, count: 30 }], [{ lengthMm: 100, widthMm: 10, count: 12 }], 0),
    )
    const packing = byPatterns(job, nothing(job), 1e6, SEED, 0)
    expect(faults(job, packing)).toEqual([])
    expect([packing.sheets.length, packing.left.length]).toEqual([12, 18])
  })

  it('gives the start where nothing better is found', () => {
    const job = only(
      jobsOf([{ lengthMm: 60, widthMm: 10, count: 3 }], [{ lengthMm: 100, widthMm: 10, count: 9 }], 0),
    )
    const start = byPatterns(job, nothing(job), 1e5, SEED, 0)
    expect(byPatterns(job, start, 1e5, SEED + 1, 0)).toBe(start)
    expect(byPatterns(job, start, 0, SEED, 0)).toBe(start)
  })

  // G. F. Cintra et al. 2008; best costs on record with two stages of cuts, from tests/outside/cutting.
  it.each(published.filter(({ id }) => ['gcut1d', 'gcut5d', 'gcut6d'].includes(id)))(
    '$id: within two in a hundred of the best cost on record',
    ({ stock, parts, bestCost }) => {
      const job = only(
        jobsOf(
          parts.map(([lengthMm, widthMm, count]) => ({ lengthMm, widthMm, count })),
          stock.map(([lengthMm, widthMm, cost]) => ({ lengthMm, widthMm, cost, count: 1000 })),
          0,
        ),
      )
      const packing = byPatterns(job, nothing(job), 3e7, SEED, 0)
      expect(faults(job, packing)).toEqual([])
      expect(packing.left).toEqual([])
      expect(scoreOf(job, packing).price).toBeLessThanOrEqual(1.02e6 * bestCost)
    },
  )
})

it(`jobs at random with few boards of several kinds keep all rules, seed ${SEED}`, () => {
  const random = randomFrom(SEED)
  const whole = (from: number, to: number) => from + Math.floor(random() * (to - from + 1))
  for (let run = 0; run < 20; run++) {
    const parts = Array.from({ length: whole(1, 4) }, () => ({
      lengthMm: whole(10, 60),
      widthMm: whole(10, 60),
      count: whole(1, 30),
      grain: random() < 0.5 ? ('length' as const) : ('any' as const),
    }))
    const stock = Array.from({ length: whole(1, 3) }, () => ({
      lengthMm: whole(60, 120),
      widthMm: whole(60, 120),
      count: whole(1, 8),
      grain: 'length' as const,
      // Boards that cost nothing are taken too.
      ...(run % 2 === 0 && { cost: whole(0, 3) }),
    }))
    for (const job of jobsOf(parts, stock, 0)) {
      expect(faults(job, byPatterns(job, nothing(job), 2e5, run, 0))).toEqual([])
    }
  }
})
