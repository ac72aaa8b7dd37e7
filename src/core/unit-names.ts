import type { Unit } from '../schema/quantity.ts'

/** What a unit measures, how people write it, and its name in mathjs (null where mathjs has none). */
interface UnitName {
  measures: string
  written: string
  engine: string | null
}

export const UNIT_NAMES = {
  mm: { measures: 'a length', written: 'mm', engine: 'mm' },
  m: { measures: 'a length', written: 'm', engine: 'm' },
  cm2: { measures: 'an area', written: 'cm2', engine: 'cm^2' },
  mm2: { measures: 'an area', written: 'mm2', engine: 'mm^2' },
  L: { measures: 'a volume', written: 'L', engine: 'L' },
  Hz: { measures: 'a frequency', written: 'Hz', engine: 'Hz' },
  ohm: { measures: 'a resistance', written: 'ohm', engine: 'ohm' },
  kohm: { measures: 'a resistance', written: 'kohm', engine: 'kohm' },
  mH: { measures: 'an inductance', written: 'mH', engine: 'mH' },
  uF: { measures: 'a capacitance', written: 'uF', engine: 'uF' },
  g: { measures: 'a mass', written: 'g', engine: 'g' },
  kg: { measures: 'a mass', written: 'kg', engine: 'kg' },
  W: { measures: 'a power', written: 'W', engine: 'W' },
  V: { measures: 'a voltage', written: 'V', engine: 'V' },
  A: { measures: 'a current', written: 'A', engine: 'A' },
  mA: { measures: 'a current', written: 'mA', engine: 'mA' },
  mAh: { measures: 'a charge', written: 'mAh', engine: 'mA h' },
  dB: { measures: 'a level', written: 'dB', engine: null },
  degC: { measures: 'a temperature', written: 'degC', engine: 'degC' },
  kPa: { measures: 'a pressure', written: 'kPa', engine: 'kPa' },
  percent: { measures: 'a percentage', written: '%', engine: null },
  s: { measures: 'a time', written: 's', engine: 's' },
  ms: { measures: 'a time', written: 'ms', engine: 'ms' },
  h: { measures: 'a time', written: 'h', engine: 'h' },
  mC: { measures: 'a charge', written: 'mC', engine: 'mC' },
  mW: { measures: 'a power', written: 'mW', engine: 'mW' },
  'm/s': { measures: 'a speed', written: 'm/s', engine: 'm/s' },
  'kg/m3': { measures: 'a density', written: 'kg/m3', engine: 'kg/m^3' },
  'kg/s': { measures: 'a mechanical resistance', written: 'kg/s', engine: 'kg/s' },
  'mm/N': { measures: 'a compliance', written: 'mm/N', engine: 'mm/N' },
  'T.m': { measures: 'a motor strength', written: 'T.m', engine: 'T m' },
  deg: { measures: 'an angle', written: 'deg', engine: 'deg' },
  AWG: { measures: 'a wire gauge', written: 'AWG', engine: null },
} as const satisfies Record<Unit, UnitName>

/** Kinds that no field takes, only to say what was written. */
export const OTHER_KINDS = [
  { measures: 'a force', engine: 'N' },
  { measures: 'an energy', engine: 'J' },
]

/** Marks that mathjs does not read, written as it does; micro and ohm each exist as a sign and as a Greek letter. */
const MARKS: [RegExp, string][] = [
  [/[\u00b5\u03bc]/g, 'u'],
  [/[\u03a9\u2126]/g, 'ohm'],
  [/℃|°\s*C/g, 'degC'],
  [/℉|°\s*F/g, 'degF'],
  [/°/g, 'deg'],
  [/²/g, '^2'],
  [/³/g, '^3'],
  [/[·⋅]/g, ' '],
]

/** Spellings in common use that mathjs does not know or reads as something else. */
const SPELLINGS = new Map([
  ['"', 'in'],
  ['″', 'in'],
  ['”', 'in'],
  ["''", 'in'],
  ["'", 'ft'],
  ['′', 'ft'],
  ['thou', 'mil'],
  ['hz', 'Hz'],
  ['khz', 'kHz'],
  ['KHz', 'kHz'],
  ['Ohm', 'ohm'],
  ['Ohms', 'ohm'],
  ['kohms', 'kohm'],
  ['kOhm', 'kohm'],
  ['kOhms', 'kohm'],
  ['KOhm', 'kohm'],
  ['MOhm', 'Mohm'],
  ['mAh', 'mA h'],
  ['Ah', 'A h'],
  ['T.m', 'T m'],
  ['Tm', 'T m'],
  ['kg/m3', 'kg/m^3'],
  ['mph', 'mi/h'],
  ['db', 'dB'],
  ['percent', '%'],
  ['% RH', '%'],
  ['awg', 'AWG'],
  ['gauge', 'AWG'],
])

/** Letters that mean a unit only beside a field of that kind: "20 C" is no charge, "4.7 k" no temperature. */
const BESIDE: Partial<Record<string, Map<string, string>>> = {
  'a temperature': new Map([
    ['C', 'degC'],
    ['F', 'degF'],
  ]),
  'a resistance': new Map([
    ['R', 'ohm'],
    ['k', 'kohm'],
    ['K', 'kohm'],
    ['M', 'Mohm'],
  ]),
}

/** Units of wood and tape that people write in any letters; of others a capital is a million times more. */
const IN_ANY_LETTERS: Partial<Record<string, Map<string, string>>> = {
  'a length': new Map([
    ['mm', 'mm'],
    ['cm', 'cm'],
    ['m', 'm'],
    ['in', 'in'],
    ['inch', 'in'],
    ['inches', 'in'],
    ['ft', 'ft'],
    ['feet', 'ft'],
  ]),
  'an area': new Map([
    ['mm2', 'mm^2'],
    ['cm2', 'cm^2'],
    ['sq cm', 'cm^2'],
    ['in2', 'in^2'],
    ['sq in', 'in^2'],
  ]),
  'a volume': new Map([
    ['l', 'L'],
    ['ltr', 'L'],
    ['liter', 'L'],
    ['litre', 'L'],
    ['liters', 'L'],
    ['litres', 'L'],
    ['ml', 'mL'],
    ['mm3', 'mm^3'],
    ['cm3', 'cm^3'],
    ['in3', 'in^3'],
    ['cu in', 'in^3'],
    ['ft3', 'ft^3'],
    ['cu ft', 'ft^3'],
  ]),
}

/** The unit part of a text in the spelling of mathjs, for a field that carries `unit`. */
export function spelledForEngine(written: string, unit: Unit): string {
  const marked = MARKS.reduce((text, [mark, name]) => text.replace(mark, name), written).trim()
  const { measures } = UNIT_NAMES[unit]
  // "16 Mm" is a slip of the key, never a length of the sky; an abbreviation may have its full stop.
  const lower = marked.toLowerCase().replace(/\.(?= |$)|\^/g, '')
  return (
    BESIDE[measures]?.get(marked) ?? SPELLINGS.get(marked) ?? IN_ANY_LETTERS[measures]?.get(lower) ?? marked
  )
}
