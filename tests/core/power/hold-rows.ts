import { describe, expect, it } from 'vitest'
import { checks, expectWithin } from '../../outside/checks.ts'

/** How the rows of one shape are worked out: what their ids begin with, and our figures under the names of the row. */
// biome-ignore lint/suspicious/noExplicitAny: rows of many shapes, read by the test that knows each
export type Cases = Record<string, (inputs: any) => Record<string, unknown>>

/** Holds every row of a topic; the longest matching beginning wins, and a row that nothing matches fails. */
export function holdRows(topic: string, cases: Cases): void {
  const beginnings = Object.keys(cases).sort((a, b) => b.length - a.length)
  describe(`published or derived rows: ${topic}`, () => {
    it.each(checks('electrical-checks.json', topic).map((check) => [check.id, check] as const))(
      '%s',
      (id, check) => {
        const beginning = beginnings.find((start) => id.startsWith(start))
        expect(beginning, `no code for ${id}`).toBeDefined()
        const ours = cases[beginning ?? '']?.(check.inputs)
        expect(Object.keys(check.expected).length).toBeGreaterThan(0)
        for (const key of Object.keys(check.expected)) expectWithin(check, key, ours?.[key])
      },
    )
  })
}
