import { describe, expect, it } from 'vitest'
import { boxTuning } from '../../../src/core/box/box-tuning.ts'
import { closedAlpha, closedF3OverFc, closedPeakDb, suitedBoxes } from '../../../src/core/box/suited-boxes.ts'
import { checks, expectWithin } from '../../outside/checks.ts'

// R. H. Small 1972: named in each row.
it.each(checks('acoustics-checks.json', 'alignment-closed'))('$id by the closed formulas', (check) => {
  expectWithin(check, 'peakDb', closedPeakDb(check.inputs['qtc']))
  expectWithin(check, 'f3OverFc', closedF3OverFc(check.inputs['qtc']))
})

it('no closed box lowers the Q of a driver', () => {
  expect(closedAlpha(0.9, 0.7, 0)).toBeNull()
})

it('without losses the compliance ratio is (Qtc/Qts)² − 1', () => {
  // R. H. Small 1972.
  expect(closedAlpha(0.4, 0.8, 0)).toBeCloseTo(3, 9)
})

it('a box of more than a hundred times Vas counts as none', () => {
  // Small 1972: alpha = (Qtc/Qts)² − 1 is 0 where the driver has that Q by itself, and 0.0100 at Qtc = 1.00499 Qts.
  expect(closedAlpha(0.5, 0.5000001, 0)).toBeNull()
  expect(closedAlpha(0.5, 0.5 * Math.sqrt(1.0099), 0)).toBeNull()
  expect(closedAlpha(0.5, 0.5 * Math.sqrt(1.0101), 0)).toBeCloseTo(0.0101, 9)
})

const DRIVER = { fsHz: 60, qms: 4, qes: 0.4, vasL: 8, sdCm2: 90, reOhm: 6, leMh: 0 }
const QTS = (4 * 0.4) / 4.4

describe('each box, built, does what is said of it', () => {
  const suited = suitedBoxes({ fsHz: 60, qts: QTS, vasL: 8, liningGain: 1, closedLoss: 0 }, null, 0.8)
  it('lists the wanted one first, then the named closed ones, then the vented one', () => {
    expect(suited.map(({ alignment }) => alignment)).toEqual([
      'wanted Qtc 0.800',
      'critically damped',
      'Bessel',
      'Butterworth B2',
      'Chebyshev C2, 1.25 dB',
      'QB3',
    ])
  })
  it.each(suited.map((box) => [box.alignment, box] as const))('%s', (_, box) => {
    const outcome = boxTuning({
      driver: DRIVER,
      box: {
        kind: box.kind,
        netVolumeL: box.netVolumeL ?? 1,
        leakageQ: null,
        absorptionQ: null,
        portQ: null,
      },
      ...(box.kind === 'vented' && {
        port: { innerDiameterMm: 50, tuningHz: box.tuningHz ?? 50, model: 'lumped' as const },
      }),
    })
    if ('faults' in outcome) throw new Error('refused')
    const { tuning } = outcome.sections
    // The circuit is the outside here: it is held against published cases elsewhere.
    expect(tuning.f3Hz! / box.f3Hz!).toBeCloseTo(1, 3)
    expect(tuning.peakDb).toBeCloseTo(box.peakDb!, 2)
  })
})

it('says so when no vented box suits a lightly damped driver', () => {
  const vented = suitedBoxes({ fsHz: 60, qts: 1.2, vasL: 8, liningGain: 1, closedLoss: 0 }, 7, null).at(-1)
  expect(vented).toMatchObject({ kind: 'vented', alignment: 'none', netVolumeL: null })
})

it('tells the losses in words beside the symbol', () => {
  const of = (leakageQ: number | null) =>
    suitedBoxes({ fsHz: 60, qts: QTS, vasL: 8, liningGain: 1, closedLoss: 0 }, leakageQ, null).at(-1)?.text
  expect(of(7)).toMatch(/ with all losses taken as a leak of Q 7\.0 \(QL\)$/)
  expect(of(null)).toMatch(/ without losses$/)
})

it('lining makes the box smaller by its gain', () => {
  const plain = suitedBoxes({ fsHz: 60, qts: QTS, vasL: 8, liningGain: 1, closedLoss: 0 }, 7, null)
  const filled = suitedBoxes({ fsHz: 60, qts: QTS, vasL: 8, liningGain: 1.15, closedLoss: 0 }, 7, null)
  expect(plain[1]!.netVolumeL! / filled[1]!.netVolumeL!).toBeCloseTo(1.15, 9)
})

it('with its losses a closed box still gets the Q it was sized for', () => {
  const driver = { fsHz: 124, qms: 3.2, qes: 0.55, vasL: 0.92, sdCm2: 28, reOhm: 3.4, leMh: 0 }
  const box = { kind: 'closed' as const, netVolumeL: 1.5, leakageQ: 7, absorptionQ: 30 }
  const sized = boxTuning({ driver, box, wantedQtc: 0.8 })
  if ('faults' in sized) throw new Error('refused')
  const built = boxTuning({ driver, box: { ...box, netVolumeL: sized.sections.suitedBoxes[0]!.netVolumeL! } })
  if ('faults' in built) throw new Error('refused')
  expect(built.sections.tuning.qtc).toBeCloseTo(0.8, 6)
})
