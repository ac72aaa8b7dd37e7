import { describe, expect, it } from 'vitest'
import { measuredBox, withNoise } from '../../outside/as-built-boxes.ts'
import { PLANTED_CASES } from '../../outside/as-built-plans.ts'
import { codesOf, told } from './told.ts'

describe.each([
  [0, true],
  [0.01, false],
  [0.03, true],
  [0.03, false],
])('the planted cause comes first with noise of %d, phase %s', (noise, withPhase) => {
  it.each(PLANTED_CASES.map((given) => [given.name, given] as const))('%s', async (_, given) => {
    const reading = withNoise(await measuredBox(given.built, given.planted), noise, 3)
    const result = told(given.plan.design, reading, { withPhase })
    const [first] = result.sections.causes.map(({ code }) => code)
    expect(first ?? codesOf(result).find((code) => code === 'as-built-as-planned')).toBe(given.cause)
  })
})
