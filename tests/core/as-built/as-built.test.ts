import { describe, expect, it } from 'vitest'
import { asBuilt } from '../../../src/core/as-built/as-built.ts'
import { isRefusal } from '../../../src/core/outcome.ts'
import type { Design } from '../../../src/schema/design.ts'
import { measuredBox, type Reading, withNoise } from '../../outside/as-built-boxes.ts'
import { PLANTED_CASES } from '../../outside/as-built-plans.ts'

function found(design: Design, { frequencyHz, ohm, phaseDeg }: Reading, withPhase: boolean) {
  const result = asBuilt({
    design,
    measured: { sweep: { frequencyHz, impedanceOhm: ohm, ...(withPhase && { phaseDeg }) } },
  })
  if (isRefusal(result)) throw new Error(JSON.stringify(result.faults))
  return result
}

describe.each([true, false])('the planted cause comes first, with phase: %s', (withPhase) => {
  describe.each([0, 0.01, 0.03])('with noise of %d', (noise) => {
    it.each(PLANTED_CASES.map((given) => [given.name, given] as const))('%s', async (_, given) => {
      const reading = withNoise(await measuredBox(given.built, given.planted), noise, 3)
      const { findings, sections } = found(given.plan.design, reading, withPhase)
      const first =
        sections.causes[0]?.code ?? findings.find(({ code }) => code === 'as-built-as-planned')?.code
      expect(first).toBe(given.cause)
    })
  })
})
