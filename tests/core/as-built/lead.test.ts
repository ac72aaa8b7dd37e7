import { expect, it } from 'vitest'
import { leakyPair } from '../../../src/api/as-built/example.ts'
import { asBuilt } from '../../../src/core/as-built/as-built.ts'
import { measuredBox } from '../../outside/as-built-boxes.ts'
import { VENTED_PAIR } from '../../outside/as-built-plans.ts'
import { told } from './told.ts'

it('a lead with more resistance than any reading is refused: it is part of every reading', () => {
  const { design, measured } = leakyPair
  // The lowest of the readings is 7.25 ohm.
  expect(asBuilt({ design, measured: { ...measured, leadOhm: 9 } })).toEqual({
    faults: [
      {
        at: '/measured/leadOhm',
        message: expect.stringContaining('the lowest reading of the sweep is 7.25 ohm'),
      },
    ],
  })
  expect(asBuilt({ design, measured: { ...measured, leadOhm: 0.2 } })).not.toHaveProperty('faults')
})

it('a lead of more than an ohm that makes up half of a reading is refused: what is left would be told as a fault', () => {
  const { design, measured } = leakyPair
  const faults = (leadOhm: number) => {
    const result = asBuilt({ design, measured: { ...measured, leadOhm } })
    return 'faults' in result ? result.faults.map(({ at }) => at) : []
  }
  for (const leadOhm of [3.7, 5, 6.5, 6.95, 7.2]) expect(faults(leadOhm)).toEqual(['/measured/leadOhm'])
  for (const leadOhm of [0, 1, 2, 3.6]) expect(faults(leadOhm)).toEqual([])
})

it('a lead of more than half of a reading is believed where what is left is as planned', async () => {
  const { design, netlist } = VENTED_PAIR
  const reading = await measuredBox({ ...netlist, sourceOhm: 2.5 })
  const { built } = told(design, reading, { leadOhm: 2.5 }).sections
  expect(built.state).toBe('as-wired')
  // Two coils in parallel.
  expect(Math.abs(built.meterOhm!.value! / (netlist.driver.reOhm / 2) - 1)).toBeLessThan(0.02)
})

it('no wiring is told that leaves no resistance, however low the readings are', () => {
  const { design, measured } = leakyPair
  const { sweep } = measured
  if (!('impedanceOhm' in sweep)) throw new Error('the example is a list of impedances')
  const { impedanceOhm = [], phaseDeg = [] } = sweep
  // The resistance at the terminals is some 6.9 ohm.
  for (const [lessOhm, leadOhm] of [
    [6, 0.95],
    [6.2, 0.75],
    [6.4, 0.2],
  ] as const) {
    const parts = impedanceOhm.map((ohm, i) => {
      const angle = ((phaseDeg[i] ?? 0) * Math.PI) / 180
      return { re: ohm * Math.cos(angle) - lessOhm, im: ohm * Math.sin(angle) }
    })
    const lower = {
      ...sweep,
      impedanceOhm: parts.map(({ re, im }) => Math.hypot(re, im)),
      phaseDeg: parts.map(({ re, im }) => (Math.atan2(im, re) * 180) / Math.PI),
    }
    const result = asBuilt({ design, measured: { sweep: lower, leadOhm } })
    if ('faults' in result) throw new Error(JSON.stringify(result.faults))
    expect(result.sections.built.meterOhm?.value ?? 1).toBeGreaterThan(0)
    expect(result.findings.map(({ message }) => message).join(' ')).not.toMatch(/-\d/)
  }
})
