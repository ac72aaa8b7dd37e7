import { describe, expect, it } from 'vitest'
import { asBuiltAnswer } from '../../src/api/as-built/answer.ts'
import { leakyPair } from '../../src/api/as-built/example.ts'
import { asBuilt } from '../../src/core/as-built/as-built.ts'
import { isRefusal } from '../../src/core/outcome.ts'
import type { AsBuiltRequest } from '../../src/schema/as-built.ts'

function answerTo(request: AsBuiltRequest): string {
  const result = asBuilt(request)
  if (isRefusal(result)) throw new Error(JSON.stringify(result.faults))
  return asBuiltAnswer(result.sections, result.findings)
}

describe('the sentences about a finished box', () => {
  it('name the figures, then the first cause, then how many more', () => {
    // The readings of the example are of a box tuned to 99 Hz with QL 4, QA 50 and QP 60: all in all Q 3.5.
    expect(answerTo(leakyPair)).toMatch(
      /^The finished box is tuned to 99\.\d Hz, acts as 2\.5\d L, loses as much as Q 3\.\d\. The box leaks: QL is [34]\.\d instead of 10 .* 1 more cause in the findings\.$/,
    )
  })

  it('are only what is wrong with the sweep when nothing can be told from it', () => {
    const { sweep } = leakyPair.measured
    const flat = { ...sweep, impedanceOhm: sweep.frequencyHz?.map(() => 7) ?? [] }
    expect(answerTo({ ...leakyPair, measured: { sweep: flat } })).toMatch(/^The sweep does not show/)
  })
})
