import { describe, expect, it } from 'vitest'
import { readSweep } from '../../../src/core/measurement/sweep.ts'
import { isRefusal } from '../../../src/core/outcome.ts'
import type { ImpedanceSweep } from '../../../src/schema/impedance-sweep.ts'

const HZ = [20, 40, 60, 80, 100, 150, 200, 400, 1000]
const OHM = [4, 5.5, 8, 15, 26, 9, 6, 4.5, 4.2]
const PHASE = [20, 35, 45, 40, 0, -40, -35, -10, 5]

const read = (sweep: ImpedanceSweep) => readSweep(sweep, '/sweep')
const columns = (sweep: ImpedanceSweep) => {
  const result = read(sweep)
  if (isRefusal(result)) throw new Error(JSON.stringify(result))
  const { frequencyHz, ohm, phaseDeg } = result
  return { hz: [...frequencyHz], ohm: [...ohm], phase: phaseDeg === null ? null : [...phaseDeg] }
}
const messages = (sweep: ImpedanceSweep): string => {
  const result = read(sweep)
  return isRefusal(result) ? result.faults.map(({ at, message }) => `${at} ${message}`).join('\n') : ''
}
const text = (separator: string, mark: string, header: string[] = []) =>
  [
    ...header,
    ...HZ.map((hz, i) => [hz, OHM[i], PHASE[i]].map((v) => String(v).replace('.', mark)).join(separator)),
  ].join('\n')

describe('a sweep is read', () => {
  it('from columns, falling ones turned round', () => {
    const up = columns({ frequencyHz: HZ, impedanceOhm: OHM, phaseDeg: PHASE })
    expect(up).toEqual({ hz: HZ, ohm: OHM, phase: PHASE })
    expect(
      columns({ frequencyHz: HZ.toReversed(), impedanceOhm: OHM.toReversed(), phaseDeg: PHASE.toReversed() }),
    ).toEqual(up)
  })

  it.each([
    [';', ','],
    [';', '.'],
    ['\t', ','],
    ['\t', '.'],
    [',', '.'],
    [', ', '.'],
    [' ', '.'],
    ['   ', ','],
  ])('from text with %j between columns and %j before the tenths', (separator, mark) => {
    expect(columns({ csv: text(separator, mark) })).toEqual({ hz: HZ, ohm: OHM, phase: PHASE })
  })

  it('from text with quoted cells and decimal commas', () => {
    const csv = HZ.map((hz, i) => `"${hz}","${String(OHM[i]).replace('.', ',')}"`).join('\r\n')
    expect(columns({ csv })).toEqual({ hz: HZ, ohm: OHM, phase: null })
  })

  it('by the header: other order, kilohertz, comments above', () => {
    const csv = [
      '* bench, evening',
      'Phase (deg);Impedance (ohm);Frequency (kHz)',
      ...HZ.map((hz, i) => `${PHASE[i]};${OHM[i]};${hz / 1000}`),
    ].join('\n')
    const found = columns({ csv })
    expect(found.ohm).toEqual(OHM)
    expect(found.phase).toEqual(PHASE)
    found.hz.forEach((hz, i) => {
      expect(hz).toBeCloseTo(HZ[i] ?? 0, 9)
    })
  })

  it('from voltages in any order: impedance is resistor times the ratio', () => {
    const steps = HZ.map((frequencyHz, i) => ({ frequencyHz, driverV: (OHM[i] ?? 0) * 0.01, resistorV: 0.1 }))
    const turned = [...steps.slice(4), ...steps.slice(0, 4)]
    const found = columns({ readings: { resistorOhm: 10, steps: turned } })
    expect(found.hz).toEqual(HZ)
    found.ohm.forEach((ohm, i) => {
      expect(ohm).toBeCloseTo(OHM[i] ?? 0, 9)
    })
  })
})

describe('a sweep is refused', () => {
  it.each<[string, ImpedanceSweep, RegExp]>([
    ['empty', {}, /no readings/],
    ['in two forms', { frequencyHz: HZ, impedanceOhm: OHM, csv: '1,2' }, /more than one form/],
    ['with one column', { frequencyHz: HZ }, /impedanceOhm .*both/],
    ['of unequal columns', { frequencyHz: HZ, impedanceOhm: OHM.slice(1) }, /8 values for 9/],
    ['too short', { frequencyHz: HZ.slice(0, 5), impedanceOhm: OHM.slice(0, 5) }, /too few points, 5/],
    ['with columns swapped', { frequencyHz: OHM, impedanceOhm: HZ }, /swapped/],
    ['in kilohertz', { frequencyHz: HZ.map((hz) => hz / 1000), impedanceOhm: OHM }, /kilohertz/],
    [
      'out of order',
      { frequencyHz: [20, 60, 40, 80, 100, 150, 200, 400, 1000], impedanceOhm: OHM },
      /reading 3 .* turns back/,
    ],
    ['with a negative impedance', { csv: text(';', '.').replace('26', '-26') }, /reading 5 is -26/],
    ['with a zero impedance', { csv: text(';', '.').replace('26', '0') }, /reading 5 is 0/],
    ['that is not finite', { csv: text(';', '.').replace('26', '1e999') }, /reading 5 is Infinity/],
    [
      'with marks between thousands',
      { csv: text(';', '.').replace('1000', '1,000.0') },
      /line 9 begins with a number/,
    ],
    ['without numbers', { csv: 'frequency;impedance\nlow;high' }, /no line of numbers/],
    [
      'with commas of two meanings',
      { csv: HZ.map((hz) => `${hz},5,8,1`).join('\n') },
      /line 1 has 4 numbers/,
    ],
    [
      'with phase in radians',
      { frequencyHz: HZ, impedanceOhm: OHM, phaseDeg: PHASE.map((p) => (p * Math.PI) / 180) },
      /radians/,
    ],
    [
      'with phase of something else',
      { frequencyHz: HZ, impedanceOhm: OHM, phaseDeg: PHASE.map((p) => p + 120) },
      /beyond 90 degrees/,
    ],
  ])('%s', (_, sweep, said) => {
    expect(messages(sweep)).toMatch(said)
  })

  it('below the place of the sweep', () => {
    expect(messages({ frequencyHz: HZ, impedanceOhm: OHM.slice(1) })).toMatch(/^\/sweep\/impedanceOhm /)
    expect(messages({ csv: 'x' })).toMatch(/^\/sweep\/csv /)
  })
})
