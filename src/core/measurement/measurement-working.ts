import type { Formula } from '../working.ts'
import type { Measured } from './measure-driver.ts'

const SMALL = 'R. H. Small, J. Audio Eng. Soc. 20, 383 (June 1972), from memory'

/** The printed working of one driver: what can be followed by hand from the fitted values. */
export function measurementWorking({ result, fit, driver }: Measured): Formula[] {
  const { qms = 1, qes = 1, fsHz = 1, mmsG = 1, reOhm = 1 } = result.parameters
  const { mass, stiffness } = fit.sought
  const named = (quantity: string) => `${quantity} of ${result.id}`
  const rows: Formula[] = [
    {
      quantity: named('total Q'),
      formula: 'qes * qms / (qes + qms)',
      with: { qes, qms },
      unit: '',
      source: SMALL,
    },
    {
      quantity: named('impedance at resonance without the coil'),
      formula: 're * (1 + qms / qes)',
      with: { re: reOhm, qms, qes },
      unit: 'ohm',
      source: SMALL,
    },
    {
      quantity: named('motor strength'),
      formula: 'sqrt(2 * pi * fs * mms * 1e-3 * re / qes)',
      with: { fs: fsHz, mms: mmsG, re: reOhm, qes },
      unit: 'T.m',
      source: SMALL,
    },
  ]
  if (driver.withMass !== undefined)
    rows.push({
      quantity: named('moving mass'),
      formula: 'm / ((fs / fm)^2 - 1)',
      with: { m: driver.withMass.massG, fs: fsHz, fm: fsHz / Math.sqrt(1 + mass) },
      unit: 'g',
      source: SMALL,
    })
  if (driver.inBox !== undefined)
    rows.push({
      quantity: named('compliance volume'),
      formula: 'vt * ratio',
      with: { vt: driver.inBox.volumeL, ratio: stiffness },
      unit: 'L',
      source:
        'R. H. Small, J. Audio Eng. Soc. 20, 798 (Dec 1972), from memory: ratio of box and suspension stiffness',
    })
  return rows
}
