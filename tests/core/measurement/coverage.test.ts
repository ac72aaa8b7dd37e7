import { describe, expect, it } from 'vitest'
import { driverMeasurement } from '../../../src/core/measurement/driver-measurement.ts'
import { isRefusal } from '../../../src/core/outcome.ts'
import { randomFrom } from '../../../src/core/shop/layout/random.ts'
import {
  type BenchDriver,
  benchSweep,
  MIDDLE,
  mechanics,
  noisySweep,
  SMALL,
} from '../../outside/measurement-drivers.ts'

const RUNS = 500
const SEED = 20_261_125

const SCENES = [
  {
    name: '40 points, 1 % noise, with phase',
    truth: SMALL,
    massG: 2,
    sweep: 'dec 20 20 1790',
    noise: 0.01,
    withPhase: true,
  },
  {
    name: '40 points, 3 % noise, no phase',
    truth: MIDDLE,
    massG: 8,
    sweep: 'dec 20 20 1790',
    noise: 0.03,
    withPhase: false,
  },
  {
    name: '24 points, 1 % noise, no phase',
    truth: MIDDLE,
    massG: 8,
    sweep: 'dec 12 20 1700',
    noise: 0.01,
    withPhase: false,
  },
]

const FIGURES = ['fsHz', 'qms', 'qes', 'qts', 'reOhm', 'leMh', 'mmsG'] as const
type Figure = (typeof FIGURES)[number]

function truthsOf(truth: BenchDriver): Record<Figure, number> {
  const { fsHz, qms, qes, reOhm, leMh } = truth
  // The added mass is exact here, and the cone area does not enter the moving mass.
  return { fsHz, qms, qes, qts: (qms * qes) / (qms + qes), reOhm, leMh, mmsG: mechanics(truth).mms * 1e3 }
}

/** How often of all runs each interval held the truth. */
async function heldIn({ truth, massG, sweep, noise, withPhase }: (typeof SCENES)[number]) {
  const [free, heavy] = [await benchSweep(truth, {}, sweep), await benchSweep(truth, { massG }, sweep)]
  const random = randomFrom(SEED)
  const truths = truthsOf(truth)
  const held: Record<Figure, number> = { fsHz: 0, qms: 0, qes: 0, qts: 0, reOhm: 0, leMh: 0, mmsG: 0 }
  for (let run = 0; run < RUNS; run++) {
    const driver = {
      id: 'it',
      freeAir: noisySweep(free, noise, random, withPhase),
      withMass: { massG, tolerancePercent: 0, sweep: noisySweep(heavy, noise, random, withPhase) },
      sdCm2: truth.sdCm2,
    }
    const outcome = driverMeasurement({ drivers: [driver] })
    if (isRefusal(outcome)) throw new Error(JSON.stringify(outcome.faults))
    const rows = new Map(outcome.sections.measured[0]?.figures.map((row) => [row.figure, row]))
    for (const name of FIGURES) {
      const { from = 0, to = 0 } = rows.get(name) ?? {}
      if (from <= truths[name] && truths[name] <= to) held[name] += 1 / RUNS
    }
  }
  return held
}

const mean = (list: readonly number[]) => list.reduce((sum, value) => sum + value, 0) / list.length

describe(`95 % intervals hold the truth in 93 to 97 % of ${RUNS} runs of each scene, seed ${SEED}`, async () => {
  const scenes = await Promise.all(
    SCENES.map(async (scene) => ({ name: scene.name, held: await heldIn(scene) })),
  )

  it.each(scenes)('$name, all figures', ({ held }) => {
    const share = mean(Object.values(held))
    expect(share).toBeGreaterThanOrEqual(0.93)
    expect(share).toBeLessThanOrEqual(0.97)
  })

  it.each(FIGURES)('%s, all scenes', (name) => {
    const share = mean(scenes.map(({ held }) => held[name]))
    expect(share).toBeGreaterThanOrEqual(0.93)
    expect(share).toBeLessThanOrEqual(0.97)
  })
})
