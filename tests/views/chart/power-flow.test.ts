import { describe, expect, it } from 'vitest'
import { powerBudget } from '../../../src/core/power/power-budget.ts'
import type { PowerBudgetRequest } from '../../../src/schema/power-budget.ts'
import { energyFlow } from '../../../src/views/chart/energy-flow.ts'
import { powerFlowPicture } from '../../../src/views/chart/power-flow.ts'
import { named, readXml } from './read-svg.ts'

const request: PowerBudgetRequest = {
  amplifier: { channels: 2, supplyVoltageV: 12, minimumLoadOhm: 4, efficiency: 0.8, quiescentCurrentMa: 50 },
  loadOhm: 4,
  supply: { kind: 'adapter', voltageV: 12, currentLimitA: 3, cable: { lengthM: 3, gaugeAwg: 26 } },
  programme: 'compressed-music',
}

function sectionsOf(given: PowerBudgetRequest) {
  const outcome = powerBudget(given)
  if ('faults' in outcome) throw new Error(JSON.stringify(outcome.faults))
  return outcome.sections
}

describe('where the power goes', () => {
  const sections = sectionsOf(request)
  const flow = energyFlow(sections, 2)

  it('nothing is lost on the way and nothing added', () => {
    if (flow === null) throw new Error('no flow')
    expect(flow.leadW + flow.boardW).toBeCloseTo(flow.sourceW, 9)
    expect(flow.idleW + flow.outputHeatW + flow.loadsW).toBeCloseTo(flow.boardW, 9)
  })

  // Ohm's and Joule's laws, and the definition of the efficiency that the request states.
  it('the lead takes I²R, and the loads get the stated share of what is drawn beyond idling', () => {
    if (flow === null) throw new Error('no flow')
    expect(flow.leadW).toBeCloseTo(flow.currentA ** 2 * sections.supply.cableOhm, 9)
    expect(flow.idleW).toBeCloseTo(12 * 0.05, 9)
    expect(flow.loadsW / (flow.boardW - flow.idleW)).toBeCloseTo(0.8, 9)
  })

  it('each band is as high as its power, and the finding is said', () => {
    if (flow === null) throw new Error('no flow')
    const svg = powerFlowPicture(sections, { amplifier: request.amplifier, supply: request.supply })
    const elements = readXml(svg)
    const outline = named(elements, 'path', 'flow')[0]?.attributes['d'] ?? ''
    const ys = [...outline.matchAll(/[ML][\d.]+,([\d.]+)/g)].map(([, y]) => Number(y))
    const [top = 0, foot = 0] = ys
    const lower = ys.at(-3) ?? 0
    expect((lower - top) / (foot - top)).toBeCloseTo(flow.loadsW / flow.sourceW, 2)
    expect(named(elements, 'path', 'lost')).toHaveLength(3)
    expect(named(elements, 'desc')[0]?.text).toContain(`${Math.round((100 * flow.loadsW) / flow.sourceW)} %`)
    const words = named(elements, 'text').map(({ text }) => text)
    expect(words).toEqual(expect.arrayContaining(['Adapter', 'Lead', 'Board', '2 loads', 'warms the lead']))
  })

  it('one channel is one load with half the power', () => {
    const one = { ...request, amplifier: { ...request.amplifier, channels: 1 } }
    const words = named(readXml(powerFlowPicture(sectionsOf(one), one)), 'text').map(({ text }) => text)
    expect(words).toContain('Load')
    expect(energyFlow(sectionsOf(one), 1)?.loadsW).toBeCloseTo((flow?.loadsW ?? 0) / 2, 9)
  })
})

it('a lead that cannot deliver it is told, and no band is drawn', () => {
  const weak: PowerBudgetRequest = {
    ...request,
    supply: { ...request.supply, cable: { lengthM: 100, gaugeAwg: 30 } },
  }
  const elements = readXml(powerFlowPicture(sectionsOf(weak), weak))
  expect(named(elements, 'path')).toEqual([])
  expect(named(elements, 'desc')[0]?.text).toMatch(/^The lead of [\d.]+ ohm cannot deliver/)
})
