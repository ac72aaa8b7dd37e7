import highsLoader, { type Highs } from 'highs'
import { describe, expect, it } from 'vitest'
import { type Job, jobsOf } from '../../../../src/core/shop/layout/job.ts'
import { leastPrice } from '../../../../src/core/shop/layout/least-price.ts'
import { randomFrom } from '../../../../src/core/shop/layout/random.ts'

// The package says another module format than it has.
const loadHighs = highsLoader as unknown as () => Promise<Highs>
const SEED = 60_221

/** Least price (in millionths, as jobs count it) by an integer programme: how many of each kind, that hold the area or are so many in all. */
async function proved(
  { boards }: Job,
  perBoard: (kind: number) => number,
  wanted: number,
): Promise<number | null> {
  const highs = await loadHighs()
  const sum = (of: (kind: number) => number) => boards.map((_, kind) => `${of(kind)} x${kind}`).join(' + ')
  const { Status, ObjectiveValue } = highs.solve(
    [
      'Minimize',
      ` price: ${sum((kind) => boards[kind]!.price / 1e6)}`,
      'Subject To',
      ` holds: ${sum(perBoard)} >= ${wanted}`,
      'Bounds',
      ...boards.map(({ count }, kind) => ` 0 <= x${kind} <= ${count}`),
      'General',
      ...boards.map((_, kind) => ` x${kind}`),
      'End',
    ].join('\n'),
    { mip_rel_gap: 0 },
  )
  return Status === 'Optimal' ? Math.round(1e6 * ObjectiveValue) : null
}

/** The dearer of both relaxations; Infinity where the boards do not suffice. */
async function provedPrice(job: Job, fewest: number): Promise<number> {
  const areaMm2 = job.areaUm2.reduce((sum, area) => sum + area, 0) / 1e6
  const ofArea = await proved(
    job,
    (kind) => (job.boards[kind]!.lengthUm * job.boards[kind]!.widthUm) / 1e6,
    areaMm2,
  )
  const ofCount = await proved(job, () => 1, fewest)
  return ofArea === null || ofCount === null ? Infinity : Math.max(ofArea, ofCount)
}

describe(`least price of several kinds of board, beside an integer programme, seed ${SEED}`, () => {
  const random = randomFrom(SEED)
  const whole = (from: number, to: number) => from + Math.floor(random() * (to - from + 1))
  const jobWith = (kinds: number, counts: [number, number], pieces: number) => {
    const stock = Array.from({ length: kinds }, () => ({
      lengthMm: whole(40, 100),
      widthMm: whole(30, 80),
      count: whole(...counts),
      cost: whole(3, 40),
    }))
    const part = { lengthMm: whole(10, 40), widthMm: whole(10, 30), count: pieces }
    const [job] = jobsOf([part], stock, 0)
    if (job === undefined) throw new Error('no job')
    return job
  }

  const few = Array.from({ length: 20 }, (_, index) => ({
    index,
    kinds: 2 + (index % 4),
    fewest: whole(1, 5),
  }))
  it.each(few)('$index: $kinds kinds, few on hand: the same price', async ({ kinds, fewest }) => {
    const job = jobWith(kinds, [1, 6], whole(3, 30))
    expect(leastPrice(job, fewest)).toBe(await provedPrice(job, fewest))
  })

  const many = Array.from({ length: 6 }, (_, index) => ({ index }))
  it.each(many)(
    '$index: 20 kinds, hundreds on hand: sums are thinned, the price is not above and close',
    async () => {
      const job = jobWith(20, [100, 400], 1800)
      const price = await provedPrice(job, 1)
      expect(leastPrice(job, 1)).toBeLessThanOrEqual(price)
      expect(leastPrice(job, 1)).toBeGreaterThan(0.95 * price)
    },
  )
})

it('boards that cannot hold the parts have no price', () => {
  const [job] = jobsOf([{ lengthMm: 60, widthMm: 60, count: 3 }], [{ lengthMm: 100, widthMm: 100 }], 0)
  expect(leastPrice(job!, 1)).toBe(Infinity)
})
