import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { asBuilt } from '../../../src/core/as-built/as-built.ts'
import { isRefusal } from '../../../src/core/outcome.ts'
import type { AsBuiltRequest } from '../../../src/schema/as-built.ts'
import { measuredBox } from '../../outside/as-built-boxes.ts'
import { CLOSED_BOX, RADIATOR_BOX, SERIES_PAIR, TUBE_BOX, VENTED_PAIR } from '../../outside/as-built-plans.ts'

const SEED = 20261125
const PLANS = [VENTED_PAIR, SERIES_PAIR, TUBE_BOX, CLOSED_BOX, RADIATOR_BOX]
const readings = await Promise.all(PLANS.map(({ netlist }) => measuredBox(netlist, null, [25, 20, 1500])))

/** Every number anywhere in a result. */
const numbersIn = (value: unknown): number[] => {
  if (typeof value === 'number') return [value]
  if (typeof value !== 'object' || value === null) return []
  return Object.values(value).flatMap(numbersIn)
}

function expectSound(request: AsBuiltRequest): void {
  const result = asBuilt(request)
  if (isRefusal(result)) {
    expect(result.faults.length).toBeGreaterThan(0)
    return
  }
  expect(numbersIn(result).filter((value) => !Number.isFinite(value))).toEqual([])
  const texts = result.findings.map(({ message, remedies }) => [message, ...remedies].join(' '))
  expect(texts.join(' ')).not.toMatch(/NaN|Infinity|undefined|null/)
}

const plan = fc.constantFrom(...PLANS)
const positive = (max: number) => fc.double({ min: 0.01, max, noNaN: true })

describe(`never a throw, never NaN (seed ${SEED})`, () => {
  it('for sweeps of any numbers', () => {
    const sweep = fc
      .array(fc.tuple(positive(20_000), positive(10_000), fc.double({ min: -90, max: 90, noNaN: true })), {
        minLength: 12,
        maxLength: 60,
      })
      .map((rows) => [...rows].sort(([a], [b]) => a - b))
    fc.assert(
      fc.property(plan, sweep, fc.boolean(), ({ design }, rows, withPhase) => {
        expectSound({
          design,
          measured: {
            sweep: {
              frequencyHz: rows.map(([hz]) => hz),
              impedanceOhm: rows.map(([, ohm]) => ohm),
              ...(withPhase && { phaseDeg: rows.map(([, , deg]) => deg) }),
            },
          },
        })
      }),
      { seed: SEED, numRuns: 150 },
    )
  })

  it('for the curve of one box bent out of shape and held against the plan of another', () => {
    const bend = fc.record({
      of: fc.nat(PLANS.length - 1),
      scale: fc.double({ min: 0.3, max: 3, noNaN: true }),
      stretch: fc.double({ min: 0.5, max: 2, noNaN: true }),
      outliers: fc.array(fc.tuple(fc.nat(46), positive(100)), { maxLength: 6 }),
      leadOhm: fc.double({ min: 0, max: 5, noNaN: true }),
    })
    fc.assert(
      fc.property(plan, bend, ({ design }, { of, scale, stretch, outliers, leadOhm }) => {
        const { frequencyHz, ohm } = readings[of]!
        const impedanceOhm = ohm.map((value) => value * scale)
        for (const [at, value] of outliers) if (at < impedanceOhm.length) impedanceOhm[at] = value
        expectSound({
          design,
          measured: { sweep: { frequencyHz: frequencyHz.map((hz) => hz * stretch), impedanceOhm }, leadOhm },
        })
      }),
      { seed: SEED, numRuns: 20 },
    )
  })
})
