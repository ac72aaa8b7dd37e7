import { expect, it } from 'vitest'
import { boxTuning } from '../../../src/core/box/box-tuning.ts'

const DRIVER = { fsHz: 95, qms: 3.4, qes: 0.55, vasL: 2.1, sdCm2: 52, reOhm: 3.6, leMh: 0 }
const run = (box: Parameters<typeof boxTuning>[0]['box'], tuningHz?: number) => {
  const outcome = boxTuning({
    driver: DRIVER,
    box,
    ...(tuningHz !== undefined && { port: { innerDiameterMm: 30, tuningHz, model: 'lumped' as const } }),
  })
  if ('faults' in outcome) throw new Error('refused')
  return outcome.sections.impedance
}

it('a tight closed box has one peak of Re(1 + Qms/Qes·…) at its resonance', () => {
  // R. H. Small 1972: fc = fs√(1 + α), Qmc/Qec = Qms/Qes, so the height stays Re(1 + Qms/Qes).
  const { peaks } = run({ kind: 'closed', netVolumeL: 2.1, leakageQ: null, absorptionQ: null })
  expect(peaks).toHaveLength(1)
  expect(peaks[0]!.hz / (95 * Math.SQRT2)).toBeCloseTo(1, 3)
  expect(peaks[0]!.ohm / (3.6 * (1 + 3.4 / 0.55))).toBeCloseTo(1, 3)
})

it('a lossless vented box has two peaks about a dip to Re at its tuning', () => {
  // Small 1973: fL and fH solve x² − (1 + α + h²) x + h² = 0 in (f/fs)², and |Z| falls to Re at fb.
  const { peaks, dips, minimumOhm } = run(
    { kind: 'vented', netVolumeL: 3, leakageQ: null, absorptionQ: null, portQ: null },
    80,
  )
  const [alpha, h2] = [0.7, (80 / 95) ** 2]
  const sum = 1 + alpha + h2
  const root = Math.sqrt(sum * sum - 4 * h2)
  expect(peaks.map(({ hz }) => hz / 95)).toEqual([
    expect.closeTo(Math.sqrt((sum - root) / 2), 2),
    expect.closeTo(Math.sqrt((sum + root) / 2), 2),
  ])
  expect(dips[0]!.hz).toBeCloseTo(80, 0)
  expect(minimumOhm).toBeLessThan(3.7)
})
