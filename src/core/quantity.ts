import type { Unit } from '../schema/quantity.ts'
import { type MathEngine, mathEngine } from './math-engine.ts'
import { OTHER_KINDS, spelledForEngine, UNIT_NAMES } from './unit-names.ts'

/** The field that a text is read for: its name, its unit and a value that would do. */
export interface QuantityField {
  name: string
  unit: Unit
  example?: number | undefined
}

/** Which mark stands before the tenths. */
export type DecimalMark = 'point' | 'comma'

export type ReadQuantity = { value: number } | { fault: string }

const LONGEST_TEXT = 60
const MARKS = {
  point: 'write a decimal point and no mark between thousands',
  comma: 'write one decimal comma and no mark between thousands',
} satisfies Record<DecimalMark, string>
/** A comma between digits, which may be a decimal one. */
export const COMMA = /\d,\d/
const DECIMAL_COMMA = /^([+-]?\d*),(\d+)(?![\d.,])/
const MIXED = /^(\d{1,9})(?:\s+|\s*-\s*)(\d{1,9})\s*\/\s*(\d{1,9})/
const FRACTION = /^(\d{1,9})\s*\/\s*(\d{1,9})/
const DECIMAL = /^(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/
const VULGAR = { '¼': '1/4', '½': '1/2', '¾': '3/4', '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8' }
/** Letters, the marks units are written with, and powers up to three: no text of a client is more to mathjs than a name. */
const UNIT_TEXT = /^[A-Za-z]+\d?(?:[ */^][A-Za-z\d]{1,12}){0,4}$/

/**
 * Reads a text as a quantity in the unit of a field: "6 1/4 in", "2.2 L", "470 uF", "16", "1/2\"".
 * With decimal `comma` the number may have a decimal comma instead: "2,2 L"; a decimal point is still read.
 * A bare number is in the unit of the field. The number is read here; only the unit goes to mathjs.
 * @returns the value in the unit of the field, or what is wrong with the text
 * Conversion factors are those of mathjs (checked in the tests against NIST SP 811, Thompson and Taylor, 2008).
 */
export async function readQuantity(
  text: string,
  field: QuantityField,
  decimal: DecimalMark = 'point',
): Promise<ReadQuantity> {
  if (text.length > LONGEST_TEXT)
    return { fault: `the text is longer than ${LONGEST_TEXT} characters; ${takes(field)}` }
  const plain = decimal === 'comma' ? withDecimalPoint(plainSigns(text)) : plainSigns(text)
  if (COMMA.test(plain)) return { fault: `"${text}" has a comma; ${MARKS[decimal]}: ${takes(field)}` }
  const number = leadingNumber(plain)
  if (number === undefined) return { fault: `"${text}" does not start with a number; ${takes(field)}` }
  if (!Number.isFinite(number.value)) return { fault: `"${text}" is not a finite number; ${takes(field)}` }
  const unit = spelledForEngine(number.rest, field.unit)
  if (unit === '' || unit === ownSpelling(field.unit)) return { value: number.value }
  return converted(text, number.value, unit, field)
}

/** "2,2 L" as "2.2 L"; a number with a second mark stays as it is, since one of the two would be for thousands. */
export const withDecimalPoint = (text: string): string => text.replace(DECIMAL_COMMA, '$1.$2')

const ownSpelling = (unit: Unit): string => UNIT_NAMES[unit].engine ?? UNIT_NAMES[unit].written

async function converted(
  text: string,
  value: number,
  unit: string,
  field: QuantityField,
): Promise<ReadQuantity> {
  const engine = await mathEngine()
  const kind = kindOf(unit, engine)
  if (kind === undefined) return { fault: `"${text}" has no unit known here; ${takes(field)}` }
  const own = UNIT_NAMES[field.unit].engine
  const inOwnUnit = own === null || kind === '' ? null : engine.convert(value, unit, own)
  if (inOwnUnit === null) {
    return { fault: `"${text}" is ${kind || 'something else'}; ${takes(field)}` }
  }
  return Number.isFinite(inOwnUnit)
    ? { value: withoutNoise(inOwnUnit) }
    : { fault: `"${text}" is not a finite number; ${takes(field)}` }
}

/** 470 nF are 0.47 uF, not 0.4700000000000001: a double carries 15 digits for sure, and a value on a limit must stay on it. */
const withoutNoise = (value: number): number => Number(value.toPrecision(15))

/** What a unit measures; empty for a combination without a name here, undefined when it is no unit. */
function kindOf(unit: string, engine: MathEngine): string | undefined {
  const named = Object.values(UNIT_NAMES).find((name) => name.engine === null && name.written === unit)
  if (named !== undefined) return named.measures
  if (!UNIT_TEXT.test(unit) || !engine.knows(unit)) return undefined
  const kinds = [...Object.values(UNIT_NAMES), ...OTHER_KINDS]
  const kind = kinds.find((name) => name.engine !== null && engine.convert(1, unit, name.engine) !== null)
  return kind?.measures ?? ''
}

function takes({ name, unit, example }: QuantityField): string {
  const { measures, written } = UNIT_NAMES[unit]
  const such = example === undefined ? '' : `, such as ${example} or "${example} ${written}"`
  return `${name} takes ${measures} in ${written}${such}`
}

function plainSigns(text: string): string {
  const spelled = Object.entries(VULGAR).reduce((all, [sign, plain]) => all.replace(sign, ` ${plain}`), text)
  return spelled.replace(/−/g, '-').replace(/⁄/g, '/').replace(/\s+/g, ' ').trim()
}

function leadingNumber(text: string): { value: number; rest: string } | undefined {
  const negative = text.startsWith('-')
  const unsigned = /^[+-]/.test(text) ? text.slice(1).trimStart() : text
  const found = mixed(unsigned) ?? fraction(unsigned) ?? decimal(unsigned)
  if (found === null) return undefined
  return { value: negative ? -found.value : found.value, rest: unsigned.slice(found.length).trim() }
}

function mixed(text: string) {
  const match = MIXED.exec(text)
  return match && { value: Number(match[1]) + Number(match[2]) / Number(match[3]), length: match[0].length }
}

function fraction(text: string) {
  const match = FRACTION.exec(text)
  return match && { value: Number(match[1]) / Number(match[2]), length: match[0].length }
}

function decimal(text: string) {
  const match = DECIMAL.exec(text)
  return match && { value: Number(match[0]), length: match[0].length }
}
