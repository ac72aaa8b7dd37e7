import { type Draft, type Json, valueAt } from './draft.ts'
import { type Field, unitsOf, unitText } from './field.ts'
import { make } from './make.ts'
import { asWritten, readNumbers, readWritten } from './written.ts'

/** What the form needs of the page: the design as it is, and a way to change one place of it. */
export interface Editing {
  draft: Draft
  set: (pointer: string, value: Json | undefined) => void
}

export const idOf = (pointer: string): string => `field${pointer.replaceAll('/', '-')}`

/** One input with its label, trade term, unit and the line that explains it or tells what is wrong. */
export function fieldRow(field: Field, base: string, editing: Editing): HTMLElement {
  const pointer = `${base}${field.at}`
  const id = idOf(pointer)
  const note = make('p', { class: 'hint', id: `${id}-note`, 'data-note': noteOf(field) }, noteOf(field))
  if (field.kind === 'switch') return switchRow(field, pointer, note, editing)
  const label = make('label', { for: id }, field.label, ' ', term(field))
  const row = make('div', { class: 'field', 'data-at': pointer }, label)
  row.append(make('div', { class: 'entry' }, inputs(field, pointer, editing)), note)
  return row
}

const noteOf = ({ note, usual }: Field): string => (usual === undefined ? note : `${note} Empty: ${usual}.`)

const term = ({ term: text }: Field): HTMLElement | undefined =>
  text === undefined ? undefined : make('span', { class: 'term' }, text)

function switchRow(field: Field, pointer: string, note: HTMLElement, { draft, set }: Editing): HTMLElement {
  const id = idOf(pointer)
  const { on = true } = field
  const input = make('input', {
    id,
    type: 'checkbox',
    checked: valueAt(draft, pointer) === on,
    'aria-describedby': `${id}-note`,
    onchange: () => set(pointer, input.checked ? on : undefined),
  })
  const row = make('div', { class: 'field switch', 'data-at': pointer })
  row.append(make('label', { for: id }, input, ' ', field.label), note)
  return row
}

function inputs(field: Field, pointer: string, editing: Editing): HTMLElement[] {
  if (field.kind === 'choice') return [select(field, pointer, editing)]
  if (field.kind === 'lines') return [lines(pointer, editing)]
  const units = unitsOf(field)
  const { text, unit } = asWritten(shown(editing.draft, pointer), units)
  const id = idOf(pointer)
  const input = make('input', {
    id,
    type: 'text',
    value: text,
    inputmode: field.kind === 'quantity' ? 'decimal' : undefined,
    autocomplete: 'off',
    autocapitalize: 'off',
    spellcheck: 'false',
    'aria-describedby': `${id}-note`,
    oninput: () => {
      const written = unitIn(input.value)
      if (unitBox instanceof HTMLSelectElement && units.includes(written)) unitBox.value = written
      editing.set(pointer, read())
    },
  })
  const unitBox = unitChoice(field, units, unit, () => {
    if (input.value.trim() === '') return
    input.value = withoutUnit(input.value)
    editing.set(pointer, read())
  })
  const read = (): Json | undefined => {
    if (field.kind === 'text') return input.value === '' ? undefined : input.value
    if (field.kind === 'numbers') return readNumbers(input.value)
    return readWritten(input.value, chosenUnit(input.value, unitBox, units))
  }
  return unitBox === undefined ? [input] : [input, unitBox]
}

const WRITTEN_UNIT = /^(.*\d)\s*([a-zµΩ"][^\s]*)$/i

/** The unit behind a number; empty where none is written. */
const unitIn = (text: string): string => WRITTEN_UNIT.exec(text.trim())?.[2] ?? ''

/** The unit that was chosen last counts: one written behind the number gives way. */
const withoutUnit = (text: string): string => WRITTEN_UNIT.exec(text.trim())?.[1] ?? text

function lines(pointer: string, { draft, set }: Editing): HTMLTextAreaElement {
  const id = idOf(pointer)
  const box = make('textarea', {
    id,
    rows: '6',
    spellcheck: 'false',
    'aria-describedby': `${id}-note`,
    oninput: () => set(pointer, box.value.trim() === '' ? undefined : box.value),
  })
  box.value = String(valueAt(draft, pointer) ?? '')
  return box
}

/** Lists are shown as people write them. */
const shown = (draft: Draft, pointer: string): Json | undefined => {
  const value = valueAt(draft, pointer)
  return Array.isArray(value) ? value.join(' ') : value
}

/** A unit that was written beside the number counts; else the one chosen, none for the first. */
function chosenUnit(text: string, box: HTMLElement | undefined, units: readonly string[]): string {
  if (!(box instanceof HTMLSelectElement) || /[^\d\s.,/+-]/.test(text)) return ''
  return box.value === units[0] ? '' : box.value
}

function unitChoice({ label }: Field, units: readonly string[], unit: string, change: () => void) {
  const [first] = units
  if (first === undefined) return undefined
  if (units.length === 1) return make('span', { class: 'unit' }, unitText(first))
  const box = make('select', { class: 'unit', 'aria-label': `Unit of ${label}`, onchange: change })
  for (const name of units)
    box.append(make('option', { value: name, selected: name === unit }, unitText(name)))
  return box
}

function select({ choices = [], usual }: Field, pointer: string, { draft, set }: Editing): HTMLSelectElement {
  const id = idOf(pointer)
  const now = valueAt(draft, pointer)
  const box = make('select', {
    id,
    'aria-describedby': `${id}-note`,
    onchange: () => set(pointer, box.value === '' ? undefined : box.value),
  })
  const known = choices.some(({ value }) => value === now)
  if (usual !== undefined || now === undefined)
    box.append(make('option', { value: '' }, usual === undefined ? 'Choose' : '(usual)'))
  if (now !== undefined && !known)
    box.append(make('option', { value: String(now), selected: true }, String(now)))
  for (const { value, label } of choices)
    box.append(make('option', { value, selected: value === now }, label))
  return box
}
