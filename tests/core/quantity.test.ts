import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readQuantity } from '../../src/core/quantity.ts'
import type { Unit } from '../../src/schema/quantity.ts'

const read = (text: string, unit: Unit, name = 'field', example?: number) =>
  readQuantity(text, { name, unit, example })

const valueRead = async (text: string, unit: Unit) => {
  const result = await read(text, unit)
  if ('fault' in result) throw new Error(result.fault)
  return result.value
}

const faultRead = async (text: string, unit: Unit, name?: string, example?: number) => {
  const result = await read(text, unit, name, example)
  return 'fault' in result ? result.fault : `read as ${result.value}`
}

// Thompson and Taylor, NIST Special Publication 811 (2008), appendix B.8; "exact" factors to the last digit.
const NIST: [string, Unit, number][] = [
  ['1 in', 'mm', 25.4],
  ['1 ft', 'm', 0.3048],
  ['1 yd', 'm', 0.9144],
  ['1 mil', 'mm', 0.0254],
  ['1 in^2', 'cm2', 6.4516],
  ['1 in^3', 'L', 0.016387064],
  ['1 ft^3', 'L', 28.316846592],
  ['1 gal', 'L', 3.785411784],
  ['1 lb', 'g', 453.59237],
  ['1 oz', 'g', 28.349523125],
  ['1 psi', 'kPa', 6.894757293],
  ['1 atm', 'kPa', 101.325],
  ['1 bar', 'kPa', 100],
  ['1 mph', 'm/s', 0.44704],
  ['212 °F', 'degC', 100],
  ['273.15 K', 'degC', 0],
  ['1 min', 's', 60],
]

describe('conversion factors of NIST SP 811', () => {
  it.each(NIST)('%s is so much in %s', async (text, unit, expected) => {
    expect(Math.abs((await valueRead(text, unit)) - expected)).toBeLessThan(1e-9 * Math.max(1, expected))
  })
})

// Powers of ten and fractions, worked by hand.
const WRITTEN: [string, Unit, number][] = [
  ['16', 'mm', 16],
  ['16 cm', 'mm', 160],
  ['6 1/4 in', 'mm', 158.75],
  ['6-1/4 in', 'mm', 158.75],
  ['1/2"', 'mm', 12.7],
  ['½"', 'mm', 12.7],
  ['2½ in', 'mm', 63.5],
  ['3/4', 'mm', 0.75],
  ['-1/2 in', 'mm', -12.7],
  ['2.2 L', 'L', 2.2],
  ['2.2l', 'L', 2.2],
  ['750 ml', 'L', 0.75],
  ['470 uF', 'uF', 470],
  ['0.47 \u00b5F', 'uF', 0.47],
  ['0.47 \u03bcF', 'uF', 0.47],
  ['470 nF', 'uF', 0.47],
  ['4.7 kohm', 'kohm', 4.7],
  ['4.7 kohm', 'ohm', 4700],
  ['4.7 k', 'ohm', 4700],
  ['4 \u03a9', 'ohm', 4],
  ['4 \u2126', 'ohm', 4],
  ['4 Ohms', 'ohm', 4],
  ['1.2 kHz', 'Hz', 1200],
  ['124 hz', 'Hz', 124],
  ['20 °C', 'degC', 20],
  ['20 C', 'degC', 20],
  ['88 dB', 'dB', 88],
  ['22 AWG', 'AWG', 22],
  ['500 mAh', 'mAh', 500],
  ['2.5 Ah', 'mAh', 2500],
  ['12V', 'V', 12],
  ['50 %', 'percent', 50],
  ['28 cm²', 'cm2', 28],
  ['2800 mm2', 'cm2', 28],
  ['4.2 N/A', 'T.m', 4.2],
  ['4.2 T·m', 'T.m', 4.2],
  ['0.6 N s/m', 'kg/s', 0.6],
  ['1.5e-3 H', 'mH', 1.5],
  ['.5', 'mm', 0.5],
  [' 7.  ', 'mm', 7],
  ['26 MM', 'mm', 26],
  ['26 Mm', 'mm', 26],
  ['1 Inch', 'mm', 25.4],
  ['2 in.', 'mm', 50.8],
  ['2 Mm^2', 'mm2', 2],
  ['2 CM²', 'cm2', 2],
  ['100 IN^3', 'L', 1.6387064],
  ['10 sq. in.', 'cm2', 64.516],
  ['100 in3', 'L', 1.6387064],
  ['1 cu ft', 'L', 28.316846592],
  ['2 Litres', 'L', 2],
]

describe('text as people write it', () => {
  it.each(WRITTEN)('%s in a field in %s', async (text, unit, expected) => {
    expect(await valueRead(text, unit)).toBeCloseTo(expected, 9)
  })

  it('reads every plain number as the number it is', async () => {
    const seed = 20_260_101
    const numbers = fc.double({ noNaN: true, noDefaultInfinity: true })
    await fc.assert(
      fc.asyncProperty(numbers, async (number) => (await valueRead(String(number), 'mm')) === number),
      { seed, numRuns: 300 },
    )
  })
})

describe('text that is refused', () => {
  it('says what the text measures and what the field takes', async () => {
    expect(await faultRead('3 kg', 'Hz', 'fsHz', 124)).toBe(
      '"3 kg" is a mass; fsHz takes a frequency in Hz, such as 124 or "124 Hz"',
    )
  })

  it.each([
    ['3 mm', 'dB', /is a length; field takes a level in dB/],
    ['3 dB', 'mm', /is a level; field takes a length in mm/],
    ['3 J', 'W', /is an energy; field takes a power in W/],
    ['12 V', 'A', /is a voltage; field takes a current in A/],
    ['1,5 L', 'L', /has a comma; write a decimal point.* field takes a volume in L/],
    ['1,220 mm', 'mm', /has a comma/],
    ['NaN', 'mm', /does not start with a number/],
    ['Infinity', 'mm', /does not start with a number/],
    ['', 'mm', /does not start with a number/],
    ['abc', 'mm', /does not start with a number/],
    ['0x10', 'mm', /no unit known here/],
    ['3 2.5 mm', 'mm', /no unit known here/],
    ['5 constructor', 'mm', /no unit known here/],
    ['5 __proto__', 'mm', /no unit known here/],
    ['2*3 mm', 'mm', /no unit known here/],
    ['2 mm; import("fs")', 'mm', /no unit known here/],
    ['1e999', 'mm', /is not a finite number/],
    ['1e308 km', 'mm', /is not a finite number/],
    ['1/0 in', 'mm', /is not a finite number/],
    ['1 m^1e9', 'mm', /field takes a length in mm/],
    ['1'.repeat(61), 'mm', /longer than 60 characters/],
  ] satisfies [string, Unit, RegExp][])('%s in a field in %s', async (text, unit, message) => {
    expect(await faultRead(text, unit)).toMatch(message)
  })

  it('never throws and never gives a number that is not finite, whatever is written', async () => {
    const seed = 20_260_102
    const pieces = fc.constantFrom(
      ...['1', '0', '/', ' ', '-', '.', 'e', '9', 'mm', 'k', '°', '"', '^', '(', 'N/A', 'µ', 'deg', '*'],
    )
    const texts = fc.array(pieces, { maxLength: 8 }).map((parts) => parts.join(''))
    await fc.assert(
      fc.asyncProperty(texts, fc.constantFrom<Unit>('mm', 'Hz', 'degC', 'dB', 'T.m'), async (text, unit) => {
        const result = await read(text, unit)
        return 'fault' in result ? result.fault.length > 0 : Number.isFinite(result.value)
      }),
      { seed, numRuns: 2000 },
    )
  })
})
