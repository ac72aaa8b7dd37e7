import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { designCheck } from '../../../src/core/design/design-check.ts'
import { isRefusal } from '../../../src/core/outcome.ts'
import type { Design } from '../../../src/schema/design.ts'

const twoWay: Design = JSON.parse(
  readFileSync(new URL('../../designs/two-way-monitor.json', import.meta.url), 'utf8'),
)

/** Places of the findings about heat, with these ratings of woofer and tweeter. */
function overpowered(...ratedPowerW: number[]): string[] {
  const drivers = twoWay.drivers.map((driver, i) => ({
    ...driver,
    parameters: { ...driver.parameters, ratedPowerW: ratedPowerW[i] ?? 1000 },
  }))
  const outcome = designCheck({ ...twoWay, drivers })
  if (isRefusal(outcome)) throw new Error(JSON.stringify(outcome.faults))
  return outcome.findings.filter(({ code }) => code.startsWith('driver-overpowered')).map(({ at }) => at)
}

test('each driver of a design is held against its own rating, in its own band', () => {
  expect(overpowered(1000, 1000)).toEqual([])
  expect(overpowered(1000, 0.1)).toEqual(['/drivers/1/parameters/ratedPowerW'])
  expect(overpowered(0.1, 1000)).toEqual(['/drivers/0/parameters/ratedPowerW'])
})

test('a capacitor before every driver spares the one that a single-ended output needs', () => {
  const codes = (wiring: Design['wiring']): string[] => {
    const outcome = designCheck({
      ...twoWay,
      amplifier: { ...twoWay.amplifier, output: 'single-ended' },
      ...(wiring === undefined ? {} : { wiring }),
    })
    if (isRefusal(outcome)) throw new Error(JSON.stringify(outcome.faults))
    return outcome.findings.map(({ code }) => code)
  }
  const { wiring } = twoWay
  if (wiring === undefined) throw new Error('the two-way design has lost its wiring')
  expect(codes(wiring)).toContain('output-capacitor-needed')
  expect(codes({ series: [{ capacitorUf: 1000 }, wiring] })).not.toContain('output-capacitor-needed')
})
