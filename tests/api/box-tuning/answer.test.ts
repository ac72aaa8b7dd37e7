import { expect, it } from 'vitest'
import { boxTuningAnswer } from '../../../src/api/box-tuning/answer.ts'
import { boxTuning } from '../../../src/core/box/box-tuning.ts'
import type { BoxTuningRequest } from '../../../src/schema/box-tuning.ts'

it('calls the Q of a closed box by its name before its symbol', () => {
  const request: BoxTuningRequest = {
    driver: { fsHz: 60, qms: 4, qes: 0.4, vasL: 8, sdCm2: 90, reOhm: 6 },
    box: { kind: 'closed', netVolumeL: 8, leakageQ: null, absorptionQ: null },
  }
  const outcome = boxTuning(request)
  if ('faults' in outcome) throw new Error(JSON.stringify(outcome.faults))
  // Vas = V doubles the stiffness, R. H. Small 1972: fc = √2 · 60 = 84.9 Hz, Qtc = √2 · 0.364 = 0.51.
  expect(boxTuningAnswer(outcome.sections, request)).toContain(
    'resonates at 84.9 Hz with a total Q (Qtc) of 0.51',
  )
})
