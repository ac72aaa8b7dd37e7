import { describe, expect, it } from 'vitest'
import { asBuilt } from '../../../src/core/as-built/as-built.ts'
import { isRefusal } from '../../../src/core/outcome.ts'
import { measuredBox, type Reading } from '../../outside/as-built-boxes.ts'
import { CLOSED_BOX, type PlannedPair, VENTED_PAIR } from '../../outside/as-built-plans.ts'
import { codesOf, sweepOf, told } from './told.ts'

const resultOf = (plan: PlannedPair, reading: Reading) =>
  asBuilt({ design: plan.design, measured: { sweep: sweepOf(reading) } })

function part(reading: Reading, keep: (hz: number, i: number) => boolean): Reading {
  const kept = <T>(values: readonly T[]) => values.filter((_, i) => keep(reading.frequencyHz[i]!, i))
  return { frequencyHz: kept(reading.frequencyHz), ohm: kept(reading.ohm), phaseDeg: kept(reading.phaseDeg) }
}

const whole = await measuredBox(VENTED_PAIR.netlist, null, [60, 20, 1500])
const closed = await measuredBox(CLOSED_BOX.netlist, null, [60, 20, 1500])

describe('readings of a clip that lets go', () => {
  const spoiled = (ohms: Record<number, number>): Reading => ({
    ...whole,
    ohm: whole.ohm.map((value, i) => ohms[i] ?? value),
  })
  const sound = told(VENTED_PAIR.design, whole).sections.built

  it.each([
    ['one near zero between the peaks', { 24: 0.001 }],
    ['one near zero below them', { 4: 1e-6 }],
    ['one without a load', { 24: 1e6 }],
    ['two side by side', { 24: 0.02, 25: 0.02 }],
    ['four of both kinds', { 4: 0.001, 18: 1e5, 30: 0.01, 45: 1e4 }],
  ])('do not hide the box: %s', (_, ohms) => {
    const result = told(VENTED_PAIR.design, spoiled(ohms))
    const { built, impedance } = result.sections
    expect(built.state).toBe('as-wired')
    expect(built.tuningHz!.value! / sound.tuningHz!.value!).toBeCloseTo(1, 2)
    expect(built.effectiveVolumeL!.value! / sound.effectiveVolumeL!.value!).toBeCloseTo(1, 2)
    const finding = result.findings.find(({ code }) => code === 'as-built-readings-impossible')
    expect(finding).toMatchObject({ severity: 'note', value: Object.keys(ohms).length })
    // The curve in the answer still shows what was sent.
    for (const [i, value] of Object.entries(ohms)) expect(impedance.measuredOhm[Number(i)]).toBe(value)
  })

  it('are no slips when they are a third of all: the terminals are looked at', () => {
    const result = told(VENTED_PAIR.design, { ...whole, ohm: whole.ohm.map((v, i) => (i % 3 ? v : 0.01)) })
    expect(codesOf(result)).not.toContain('as-built-readings-impossible')
    expect(result.sections.built.state).toBe('not-found')
  })

  it('do not blame the lead', () => {
    expect(codesOf(told(VENTED_PAIR.design, spoiled({ 24: 0.01 }), { leadOhm: 0.02 }))).toContain(
      'as-built-readings-impossible',
    )
  })
})

/** The vented pair has its peaks at about 71 and 182 Hz, the dip at 107 Hz; the closed box its peak at 104 Hz. */
describe('a sweep that misses the peaks gives no figures', () => {
  it.each([
    ['starts between the peaks', VENTED_PAIR, part(whole, (hz) => hz > 90)],
    ['starts on the lower peak', VENTED_PAIR, part(whole, (hz) => hz > 70)],
    ['ends between the peaks', VENTED_PAIR, part(whole, (hz) => hz < 130)],
    ['starts above both', VENTED_PAIR, part(whole, (hz) => hz > 200)],
    ['ends below the peak of a closed box', CLOSED_BOX, part(closed, (hz) => hz < 95)],
    ['starts above the peak of a closed box', CLOSED_BOX, part(closed, (hz) => hz > 115)],
    [
      'is that of a resistor',
      VENTED_PAIR,
      { ...whole, ohm: whole.ohm.map(() => 2), phaseDeg: whole.phaseDeg.map(() => 0) },
    ],
  ])('%s', (_, plan, reading) => {
    const result = told(plan.design, reading)
    expect(codesOf(result)).toEqual(['as-built-sweep-misses-peaks'])
    expect(result.sections.built).toMatchObject({
      state: 'not-found',
      tuningHz: null,
      effectiveVolumeL: null,
    })
    expect(result.sections.comparison).toEqual([])
  })
})

it('too few readings about the peaks are refused with the range that is wanted', () => {
  const result = resultOf(
    VENTED_PAIR,
    part(whole, (_, i) => i % 10 === 0),
  )
  if (!isRefusal(result)) throw new Error('not refused')
  expect(result.faults).toHaveLength(1)
  expect(result.faults[0]).toMatchObject({ at: '/measured/sweep' })
  expect(result.faults[0]!.message).toMatch(/at least 12 .* Hz/)
})

it('frequencies in kHz are never read as a box', () => {
  const result = resultOf(VENTED_PAIR, { ...whole, frequencyHz: whole.frequencyHz.map((hz) => hz / 1000) })
  expect(isRefusal(result)).toBe(true)
})

it('kilohms and milliohms are never read as a box', () => {
  for (const [factor, code] of [
    [1000, 'as-built-terminals-open'],
    [0.001, 'as-built-terminals-shorted'],
  ] as const) {
    const result = told(VENTED_PAIR.design, { ...whole, ohm: whole.ohm.map((ohm) => ohm * factor) })
    expect(codesOf(result)).toEqual([code])
    expect(result.sections.built.state).toBe('not-found')
  }
})

it('a curve that no story fits gives no figures', () => {
  // The vented pair held against the plan of a closed box: two peaks where only one can be.
  const ohm = whole.ohm.map((value) => 3.5 * value)
  const result = told(CLOSED_BOX.design, { ...whole, ohm })
  expect(codesOf(result)).toEqual(['as-built-not-explained'])
  expect(result.sections.built).toMatchObject({ state: 'not-found', resonanceHz: null, misfitPercent: null })
  expect(result.sections.impedance.fittedOhm).toEqual([])
})
