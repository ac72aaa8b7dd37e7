import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { boxTuning } from '../../../src/core/box/box-tuning.ts'
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
  const pair = design('shelf-pair')
  const { power, limits } = run(pair).sections
  const [main] = pair.drivers
  // The same box at 1 V through the other endpoint: by linearity the cone moves in proportion.
  const alone = boxTuning({
    driver: main!.parameters,
    driverCount: 2,
    driverWiring: 'series',
    box: { ...pair.box, netVolumeL: run(pair).sections.tuning.netVolumeL },
    port: pair.port!,
    drive: { voltageV: 1 },
  })
  if ('faults' in alone) throw new Error('refused')
  expect(limits.safeVoltageV! / alone.sections.limits.safeVoltageV!).toBeCloseTo(1, 2)
  expect(power.cleanVoltageV).toBeGreaterThan(limits.safeVoltageV!)
})

it('the impedance of the curves is the load the amplifier sees', () => {
  const { curves, loadCurve } = run(design('two-way-monitor')).sections
  curves.frequencyHz.forEach((hz, i) => {
    const above = loadCurve.frequencyHz.findIndex((f) => f >= hz)
    if (above < 1) return
    const [f0, f1] = [loadCurve.frequencyHz[above - 1]!, loadCurve.frequencyHz[above]!]
    const share = Math.log(hz / f0) / Math.log(f1 / f0)
    const between = loadCurve.impedanceOhm[above - 1]! * (1 - share) + loadCurve.impedanceOhm[above]! * share
    // Straight between grid points 3% apart: the sharp peaks round off by a per cent or so.
    expect(Math.abs(curves.impedanceOhm[i]! / between - 1), `at ${hz} Hz`).toBeLessThan(0.02)
  })
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

describe('what to buy and what to read', () => {
  const { materials, readings } = run(design('shelf-pair')).sections
  const counted = (word: string) => materials.find(({ item }) => item.includes(word))?.count
  it('counts for both boxes', () => {
    expect(counted('driver "main"')).toBe(4)
    expect(counted('tube')).toBe(2)
    expect(counted('amplifier board')).toBe(1)
    expect(materials.find(({ item }) => item.includes('volume control'))?.note).toBe('2 gangs')
  })
  it('a reading tells the usual mistakes from a right wiring', () => {
    const channel = readings.find(({ test }) => test.includes('speaker leads'))!
    const fine = (ohm: number) => ohm >= channel.from && ohm <= channel.to
    // Two of 3.4 ohm: right in series; in parallel, one shorted, one of 8 ohm by mistake.
    expect([6.8, 1.7, 3.4, 10.2].map(fine)).toEqual([true, false, false, false])
  })
  it('lists the parts of a crossover and reads every driver', () => {
    const twoWay = run(design('two-way-monitor')).sections
    expect(twoWay.materials.map(({ item }) => item)).toEqual(
      expect.arrayContaining(['coil 0.3 mH', 'capacitor 3.3 uF']),
    )
    expect(twoWay.readings.filter(({ test }) => test.includes('driver alone'))).toHaveLength(2)
  })
  it('a full pack of cells reads as fine as a nearly empty one', () => {
    const pair = design('shelf-pair')
    const packed: Design = { ...pair, supply: { kind: 'cells', cellsInSeries: 3, capacityMah: 2600 } }
    const source = run(packed).sections.readings.find(({ test }) => test.includes('source before'))!
    // 3.0 to 4.2 V a cell: common practice, no source.
    expect([source.from, source.to]).toEqual([expect.closeTo(9, 6), expect.closeTo(12.6, 6)])
  })
})

describe('components before the drivers', () => {
  it('a resistor costs what the divider says, in level and in limits', () => {
    const pair = design('shelf-pair')
    const resistor: Design = { ...pair, wiring: { series: [{ resistorOhm: 6.8 }, 'main', 'main'] } }
    const [bare, padded] = [run(pair).sections, run(resistor).sections]
    const relative = (given: typeof bare) =>
      given.tuning.referenceSplDb - 20 * Math.log10(given.power.cleanVoltageV)
    // Half the voltage is left above the bass: 6.8 ohm on 6.8 ohm.
    expect(relative(padded) - relative(bare)).toBeCloseTo(-6.02, 0)
    // And the Q rises as with any series resistance: Qes(Re + Rs)/Re, Small 1972 (from memory).
    const qes = 0.55 * 2
    expect(padded.tuning.qts).toBeCloseTo((qes * 3.2) / (qes + 3.2), 3)
  })
  it('a capacitor far too small leaves no bass, and the check says so', () => {
    const pair = design('shelf-pair')
    const { findings } = run({ ...pair, wiring: { series: [{ capacitorUf: 0.5 }, 'main', 'main'] } })
    expect(findings.some(({ severity }) => severity !== 'note')).toBe(true)
    expect(findings.map(({ code }) => code)).toContain('lowest-note-missing')
  })
})

it('one box with both channels is as loud as a box a channel, drivers far apart or not', () => {
  // Loudness counts each channel once: two channels of one driver each, in one box or in two of half the air.
  const stereo = design('one-box-stereo')
  const { loudness, power, tuning } = run(stereo).sections
  const perChannelDb = tuning.spl2V83Db - 20 * Math.log10(2)
  const expected =
    perChannelDb + 20 * Math.log10(power.cleanVoltageV / 2.83) + 10 * Math.log10(2) - 20 * Math.log10(1.5)
  expect(loudness?.peakDb).toBeCloseTo(expected, 1)
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
