import { readFileSync } from 'node:fs'
import { bench, describe } from 'vitest'
import { boxTuning } from '../../../src/core/box/box-tuning.ts'
import { designCheck } from '../../../src/core/design/design-check.ts'
import type { Design } from '../../../src/schema/design.ts'

const design: Design = JSON.parse(
  readFileSync(new URL('../../designs/shelf-pair.json', import.meta.url), 'utf8'),
)
const driver = design.drivers[0]!.parameters
const text = JSON.stringify(design)
// The service has long been warm when it answers; so is what is measured.
const WARM = { warmupIterations: 200, warmupTime: 1000, time: 3000 }

// Ratios hold on any machine: copying the same document through JSON is the measure beside it.
describe('core time of the whole design, beside a copy of its document', () => {
  bench(
    'copy of the document through JSON',
    () => {
      JSON.parse(text)
    },
    WARM,
  )
  bench(
    'design-check',
    () => {
      designCheck(design)
    },
    WARM,
  )
  bench(
    'box-tuning alone',
    () => {
      boxTuning({
        driver,
        driverCount: 2,
        driverWiring: 'series',
        box: design.box,
        ...(design.port && { port: design.port }),
      })
    },
    WARM,
  )
})
