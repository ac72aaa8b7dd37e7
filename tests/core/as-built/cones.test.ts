import { describe, expect, it } from 'vitest'
import { asPlanned } from '../../../src/core/as-built/built-circuit.ts'
import { plannedBox } from '../../../src/core/as-built/planned-box.ts'
import { storiesOf } from '../../../src/core/as-built/stories.ts'
import { terminalImpedance } from '../../../src/core/as-built/terminals.ts'
import { isRefusal } from '../../../src/core/outcome.ts'
import type { Design } from '../../../src/schema/design.ts'
import { measuredBox, type Planted } from '../../outside/as-built-boxes.ts'
import { C, type NetlistCase, RHO } from '../../outside/loudspeaker-netlist.ts'

const DRIVER = { fsHz: 124, qms: 3.2, qes: 0.55, vasL: 0.92, sdCm2: 28, reOhm: 3.4, leMh: 0.06 }

const design = (count: number, wiring: 'parallel' | 'series'): Design => ({
  drivers: [{ id: 'main', count, parameters: DRIVER }],
  wiring:
    wiring === 'parallel' ? { parallel: Array(count).fill('main') } : { series: Array(count).fill('main') },
  box: { kind: 'vented', netVolumeL: 2.5, lining: 'none', leakageQ: 8, absorptionQ: 40, portQ: 60 },
  port: { innerDiameterMm: 26, tuningHz: 105, model: 'lumped' },
  air: { speedMPerS: C, densityKgPerM3: RHO },
  amplifier: {},
  supply: { kind: 'adapter', voltageV: 12, currentLimitA: 2 },
})

const netlist = (count: number, wiring: 'parallel' | 'series', plug = true): NetlistCase => ({
  id: '',
  driver: DRIVER,
  count,
  wiring,
  sourceOhm: 0,
  netVolumeL: 2.5,
  lossAtHz: 105,
  leakageQ: 8,
  absorptionQ: 40,
  vent: plug ? { kind: 'plug', tuningHz: 105, areaCm2: 5.3, portQ: 60 } : null,
})

const CASES: [name: string, fault: string, given: NetlistCase, planted: Planted | null][] = [
  ['two in parallel', 'none', netlist(2, 'parallel'), null],
  [
    'two in parallel, one backwards',
    'driver-reversed',
    netlist(2, 'parallel'),
    { kind: 'reversed', driver: 1 },
  ],
  ['two in series, one backwards', 'driver-reversed', netlist(2, 'series'), { kind: 'reversed', driver: 0 }],
  [
    'three in parallel, one backwards',
    'driver-reversed',
    netlist(3, 'parallel'),
    { kind: 'reversed', driver: 2 },
  ],
  [
    'three in series, one backwards',
    'driver-reversed',
    netlist(3, 'series'),
    { kind: 'reversed', driver: 2 },
  ],
  ['two in parallel, one open', 'driver-open', netlist(2, 'parallel'), { kind: 'open', driver: 1 }],
  ['four in parallel, one open', 'driver-open', netlist(4, 'parallel'), { kind: 'open', driver: 1 }],
  [
    'two in series, one shorted',
    'driver-shorted',
    netlist(2, 'series'),
    { kind: 'shorted', driver: 0, between: ['amp', 's1'] },
  ],
]

describe('a general circuit simulator agrees on groups with a fault', () => {
  it.each(CASES)('%s', async (_, fault, given, planted) => {
    const planned = plannedBox(design(given.count, given.wiring))
    if (isRefusal(planned)) throw new Error(JSON.stringify(planned.faults))
    const story = storiesOf(planned).find((one) => one.fault === fault)!
    const reading = await measuredBox(given, planted)
    const { re, im } = terminalImpedance(
      planned,
      story,
      asPlanned(planned.speaker),
      Float64Array.from(reading.frequencyHz),
    )
    reading.ohm.forEach((ohm, i) => {
      expect(Math.hypot(re[i]!, im[i]!) / ohm, `at ${reading.frequencyHz[i]} Hz`).toBeCloseTo(1, 4)
    })
  })

  it('two joined the other way', async () => {
    const planned = plannedBox(design(2, 'parallel'))
    if (isRefusal(planned)) throw new Error(JSON.stringify(planned.faults))
    const story = storiesOf(planned).find(({ fault }) => fault === 'other-joint')!
    const reading = await measuredBox(netlist(2, 'series'))
    const grid = Float64Array.from(reading.frequencyHz)
    const { re, im } = terminalImpedance(planned, story, asPlanned(planned.speaker), grid)
    reading.ohm.forEach((ohm, i) => {
      expect(Math.hypot(re[i]!, im[i]!) / ohm).toBeCloseTo(1, 4)
    })
  })

  it('two on a channel each, the other channel not connected', async () => {
    const { wiring: _, ...alone } = design(2, 'parallel')
    const planned = plannedBox({ ...alone, amplifier: { channels: 2 } })
    if (isRefusal(planned)) throw new Error(JSON.stringify(planned.faults))
    expect(planned).toMatchObject({ driven: 1, idle: 1, meterOhm: 3.4 })
    expect(planned.assumptions).toContainEqual(expect.objectContaining({ at: '/measured', value: 1 }))
    const [story] = storiesOf(planned)
    const reading = await measuredBox(netlist(2, 'parallel'), { kind: 'open', driver: 1 })
    const grid = Float64Array.from(reading.frequencyHz)
    const { re, im } = terminalImpedance(planned, story!, asPlanned(planned.speaker), grid)
    reading.ohm.forEach((ohm, i) => {
      expect(Math.hypot(re[i]!, im[i]!) / ohm).toBeCloseTo(1, 4)
    })
  })
})
