import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { designCheck } from '../../../src/core/design/design-check.ts'
import { verdictOf } from '../../../src/core/findings/rule.ts'
import { driverMeasurement } from '../../../src/core/measurement/driver-measurement.ts'
import { isRefusal } from '../../../src/core/outcome.ts'
import type { Design } from '../../../src/schema/design.ts'

const CODE = 'driver-data-guessed'
const read = (name: string): Design =>
  JSON.parse(readFileSync(new URL(`../../designs/${name}.json`, import.meta.url), 'utf8'))

function checked(design: Design) {
  const result = designCheck(design)
  if (isRefusal(result)) throw new Error(JSON.stringify(result.faults))
  return result
}

const guessedAt = (design: Design, ...places: number[]): Design => ({
  ...design,
  drivers: design.drivers.map((driver, i) => ({ ...driver, guessed: places.includes(i) })),
})

describe('a driver whose data are guessed', () => {
  const closed = read('closed-desk-box')

  it('is warned of, so that no design with it is ready', () => {
    expect(checked(guessedAt(closed)).findings.map(({ code }) => code)).not.toContain(CODE)
    const { findings } = checked(guessedAt(closed, 0))
    const found = findings.find(({ code }) => code === CODE)
    expect(found).toMatchObject({ severity: 'warning', at: '/drivers/0/parameters' })
    expect(found?.remedies[0]).toMatch(/before the first cut/)
    expect(verdictOf(findings.filter(({ code }) => code === CODE))).toBe('review')
  })

  it('may resonate in the box within fc² = fs² + fs² α, fs by 1.5 and the mass by 1.8 either way', () => {
    const { sections, findings } = checked(guessedAt(closed, 0))
    const { fcHz = 0 } = sections.tuning
    const fsHz = 150
    const air = fcHz ** 2 - fsHz ** 2
    const from = Math.sqrt((fsHz / 1.5) ** 2 + air / 1.8)
    const to = Math.sqrt((fsHz * 1.5) ** 2 + air * 1.8)
    const said = findings.find(({ code }) => code === CODE)?.message.match(/from (\d+) Hz to (\d+) Hz/)
    expect(Math.abs(Number(said?.[1]) - from)).toBeLessThanOrEqual(0.5)
    expect(Math.abs(Number(said?.[2]) - to)).toBeLessThanOrEqual(0.5)
  })

  it('is told for itself, also behind its own closed back without a resonance', () => {
    const found = checked(guessedAt(read('two-way-monitor'), 1)).findings.filter(({ code }) => code === CODE)
    expect(found.map(({ at }) => at)).toEqual(['/drivers/1/parameters'])
    expect(found[0]?.message).toContain('"tweeter" are a guess. Bass')
  })

  it('can be planned with: the guess of a measurement plan goes into a design as it is', () => {
    const planned = driverMeasurement({
      drivers: [{ id: 'left', meterOhm: 3.4, dimensions: { surroundDiameterMm: 60 } }],
    })
    if (isRefusal(planned)) throw new Error('refused')
    const parameters = planned.sections.plan[0]?.guess?.parameters ?? {}
    const [driver] = closed.drivers
    if (driver === undefined) throw new Error('no driver')
    const { findings } = checked({ ...closed, drivers: [{ ...driver, parameters, guessed: true }] })
    expect(findings.map(({ code }) => code)).toContain(CODE)
  })

  it('has no guess where the size is not known', () => {
    const planned = driverMeasurement({ drivers: [{ id: 'left', meterOhm: 3.4 }] })
    expect(isRefusal(planned) ? undefined : planned.sections.plan[0]?.guess).toBeNull()
  })
})
