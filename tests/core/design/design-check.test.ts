import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { designCheck } from '../../../src/core/design/design-check.ts'
import { verdictOf } from '../../../src/core/findings/rule.ts'
import type { Design } from '../../../src/schema/design.ts'

const design = (name: string): Design =>
  JSON.parse(readFileSync(new URL(`../../designs/${name}.json`, import.meta.url), 'utf8'))

const run = (given: Design) => {
  const outcome = designCheck(given)
  if ('faults' in outcome) throw new Error(JSON.stringify(outcome.faults))
  return outcome
}
const faultsOf = (given: Design) => {
  const outcome = designCheck(given)
  return 'faults' in outcome ? outcome.faults.map((fault) => fault.at) : []
}

// What each build must be told, by the fact it was made to show; the first is the contract's own example and verdict.
describe('the designs', () => {
  it.each([
    ['shelf-pair', 'review', ['cone-unloaded-below-tuning', 'port-air-speed-high']],
    ['closed-desk-box', 'ready', []],
    ['parallel-too-low', 'blocked', ['load-below-amplifier-minimum']],
    ['board-too-small', 'blocked', ['boards-do-not-suffice']],
    ['port-too-long', 'blocked', ['tube-hits-back']],
    [
      'supply-too-weak',
      'review',
      ['source-too-weak-for-programme', 'reservoir-over-attach-limit', 'source-and-amplifier-share-supply'],
    ],
    ['two-way-monitor', 'review', ['own-back-not-in-curves']],
    ['one-box-stereo', 'review', ['port-air-speed-extreme']],
  ])('%s is %s', (name, verdict, codes) => {
    const { findings } = run(design(name))
    expect(verdictOf(findings)).toBe(verdict)
    expect(findings.map((finding) => finding.code)).toEqual(expect.arrayContaining(codes))
  })
})

describe('common practice holds (no source)', () => {
  it('a bridge on 5 V into 4 ohm ends below 3.1 W, and music draws a fraction of its sine current', () => {
    const { power, supply } = run(design('closed-desk-box')).sections
    // 5 V²/(2 · 4 ohm) = 3.125 W is all there can be before any loss.
    expect(power.cleanPowerW).toBeLessThan(3.125)
    expect(power.cleanPowerW).toBeGreaterThan(2)
    expect(supply.programmeA).toBeLessThan(supply.sineA / 5)
  })
  it('two drivers of 4 ohm in series are 8 ohm and read twice their Re', () => {
    const { load } = run(design('shelf-pair')).sections
    expect(load.ratedOhm).toBe(8)
    expect(load.meterOhm).toBeCloseTo(6.8, 12)
  })
  it('in parallel they are 2 ohm, and the series wiring is offered', () => {
    const { load, alternatives } = run(design('parallel-too-low')).sections
    expect(load.ratedOhm).toBe(2)
    expect(alternatives.find(({ mayDrive }) => mayDrive === true)?.ratedOhm).toBe(8)
  })
})

it('full drive is the clean voltage of the power budget', () => {
  const { power, limits, curves } = run(design('shelf-pair')).sections
  // Excursion scales with voltage: at the safe voltage the cone just reaches xmax, by linearity.
  const worst = Math.max(limits.excursionMm, limits.excursionBelowBandMm)
  expect((power.cleanVoltageV * 2.2) / worst).toBeCloseTo(limits.safeVoltageV ?? 0, 9)
  expect(curves.frequencyHz).toHaveLength(200)
})

it('the impedance of the curves is the load the amplifier sees', () => {
  const { curves, loadCurve } = run(design('two-way-monitor')).sections
  const at = (hz: number, grid: number[], ohm: number[]) => ohm[grid.findIndex((f) => f >= hz)]!
  for (const hz of [40, 200, 1000, 5000]) {
    const ratio =
      at(hz, curves.frequencyHz, curves.impedanceOhm) / at(hz, loadCurve.frequencyHz, loadCurve.impedanceOhm)
    // The two grids differ by up to 4% in frequency.
    expect(ratio).toBeGreaterThan(0.8)
    expect(ratio).toBeLessThan(1.25)
  }
})

it('a coil before the woofer takes its top end away, and a plain wire does not', () => {
  const twoWay = design('two-way-monitor')
  const plain: Design = {
    ...twoWay,
    wiring: { parallel: ['woofer', { series: [{ capacitorUf: 3.3 }, 'tweeter'] }] },
  }
  const topDb = (given: Design) =>
    run(given).sections.curves.splDb.at(-1)! - run(given).sections.tuning.referenceSplDb
  // At 20 kHz both are inductances in series, 0.4 mH of the driver and 0.3 mH before it: 20 log(0.4/0.7) = −4.86 dB.
  expect(topDb(twoWay) - topDb(plain)).toBeCloseTo(20 * Math.log10(0.4 / 0.7), 0)
})

it('both channels in one box move the box twice as hard as one', () => {
  const stereo = run(design('one-box-stereo')).sections
  // Two equal drivers share the air, so alpha counts both: 2 · 0.92 L over the acoustic volume.
  expect(stereo.tuning.alpha).toBeCloseTo((2 * 0.92) / stereo.tuning.acousticVolumeL, 3)
})

it('lists what to buy and what to read, every figure inside its range', () => {
  const { materials, readings } = run(design('shelf-pair')).sections
  expect(materials.find(({ item }) => item.includes('driver "main"'))?.count).toBe(4)
  expect(materials.some(({ item }) => item.includes('tube'))).toBe(true)
  for (const { expected, from, to } of readings) {
    expect(expected).toBeGreaterThanOrEqual(from)
    expect(expected).toBeLessThanOrEqual(to)
  }
})

it('takes a box of which only the volume is known, and says what is then missing', () => {
  const { box, stock: _, ...rest } = design('closed-desk-box')
  const { findings, sections } = run({
    ...rest,
    box: { kind: 'closed', netVolumeL: 1.5, ...(box.lining && { lining: box.lining }) },
  })
  expect(findings.map(({ code }) => code)).toContain('sides-unknown')
  expect(sections.panels).toEqual([])
})

it('takes the thickness of the only board on hand, and says so', () => {
  const pair = design('shelf-pair')
  const { panelThicknessMm: _, ...box } = pair.box
  const { assumptions, sections } = run({ ...pair, box })
  expect(assumptions.map((row) => row.at)).toContain('/box/panelThicknessMm')
  expect(sections.tuning.netVolumeL).toBeCloseTo(run(pair).sections.tuning.netVolumeL, 9)
})

it('without a board on hand the panels are drawn all the same, to be reviewed', () => {
  const { stock: _, ...pair } = design('shelf-pair')
  const { findings, sections } = run(pair)
  expect(verdictOf(findings)).toBe('review')
  expect(findings.map(({ code }) => code)).toContain('no-board-named')
  expect(sections.panels.length).toBeGreaterThan(0)
})

it('fills in a field only once', () => {
  const at = run(design('closed-desk-box')).assumptions.map((row) => row.at)
  expect(new Set(at).size).toBe(at.length)
})

describe('refusals name every fault of every part', () => {
  const pair = design('shelf-pair')
  it.each<[string, Design, string[]]>([
    [
      'an unknown driver in the wiring',
      { ...pair, wiring: { series: ['main', 'mian'] } },
      ['/wiring/series/1'],
    ],
    ['channels that do not divide', { ...pair, boxes: 3 }, ['/boxes']],
    [
      'two kinds in one air',
      { ...pair, drivers: [...pair.drivers, { id: 'other', parameters: { reOhm: 4 } }] },
      ['/drivers/1/sharesBox'],
    ],
    [
      'panels thicker than the box',
      { ...pair, box: { ...pair.box, panelThicknessMm: 70 } },
      ['/box/outer/widthMm'],
    ],
    [
      'driver, port and box at once',
      { ...pair, drivers: [{ id: 'main', count: 2, parameters: { fsHz: 90 } }], port: { count: 1 } },
      ['/drivers/0/parameters/qes', '/port/innerDiameterMm', '/port/tuningHz'],
    ],
  ])('%s', (_, given, at) => {
    expect(faultsOf(given)).toEqual(expect.arrayContaining(at))
  })
})
