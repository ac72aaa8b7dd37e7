import type { Faults } from './ask.ts'
import { type Draft, type Json, valueAt } from './draft.ts'
import { sentence } from './sentence.ts'

/** A fault with the field that it is shown at; none for parts of the design that the form does not show. */
export interface PlacedFault {
  message: string
  at: string
  field: HTMLElement | undefined
  /** Nothing was typed there yet: still needed, not wrong. */
  needed: boolean
  /** A file says in so many words that there is nothing. */
  empty: boolean
}

/** Writes each fault beside its field, takes old ones away, and gives the list for the summary. */
export function markFaults(root: HTMLElement, faults: Faults, draft: Draft): PlacedFault[] {
  const placed = faults.map(({ at, message }) => {
    const value = valueAt(draft, at)
    // What is there and has no field is not the fault of a neighbour: it is told by its own name, to be left out.
    const field = value === undefined ? fieldAt(root, at) : fieldHolding(root, at, value)
    // A box without a tick says something too, and that may be wrong.
    const needed = value === undefined && !(field?.dataset['at'] === at && field.matches('.switch'))
    return { at, message, field, needed, empty: value === null }
  })
  for (const row of fieldsOf(root)) {
    const own = placed.find(({ at }) => at === row.dataset['at'])
    // One item of a list is told at the field that holds the whole list.
    const within = placed.find(({ at, field }) => field === row && at.startsWith(`${row.dataset['at']}/`))
    show(row, own ?? within)
  }
  return placed
}

const fieldsOf = (root: HTMLElement): HTMLElement[] => [...root.querySelectorAll<HTMLElement>('[data-at]')]

function show(row: HTMLElement, fault: PlacedFault | undefined): void {
  const isWrong = fault !== undefined && !fault.needed
  row.classList.toggle('wrong', isWrong)
  row.classList.toggle('needed', fault?.needed === true)
  const input = row.querySelector('input, select, textarea')
  if (isWrong) input?.setAttribute('aria-invalid', 'true')
  else input?.removeAttribute('aria-invalid')
  const hint = row.querySelector<HTMLElement>('[data-note]')
  if (hint !== null) hint.textContent = hintOf(hint.dataset['note'] ?? '', fault)
}

function hintOf(own: string, fault: PlacedFault | undefined): string {
  if (fault === undefined) return own
  return fault.needed ? `Still needed. ${own}` : sentence(fault)
}

/** How a field is called on the page. */
export const labelOf = (row: HTMLElement): string =>
  row.querySelector('label, h3')?.textContent.trim() ?? row.dataset['label'] ?? ''

const atOf = (row: HTMLElement): string => row.dataset['at'] ?? ''

/** The field of a pointer; else one below it, else the nearest above. */
export const fieldAt = (root: HTMLElement, pointer: string): HTMLElement | undefined =>
  fieldHolding(root, pointer) ?? nearestAbove(fieldsOf(root), pointer)

/** The field that a value is typed in: its own, one for a part that such a value has, or one that holds the whole list. */
function fieldHolding(root: HTMLElement, pointer: string, value?: Json): HTMLElement | undefined {
  // The request as a whole stands nowhere in particular.
  if (pointer === '') return undefined
  const fields = fieldsOf(root)
  return (
    fields.find((row) => atOf(row) === pointer) ??
    [...root.querySelectorAll<HTMLElement>('[data-list]')].find((one) => one.dataset['list'] === pointer) ??
    fields.find((row) => isPart(row, pointer, value)) ??
    fields.find((row) => pointer.startsWith(`${atOf(row)}/`))
  )
}

function isPart(row: HTMLElement, pointer: string, value: Json | undefined): boolean {
  if (!atOf(row).startsWith(`${pointer}/`)) return false
  if (value === undefined) return true
  const isItem = /^\d/.test(atOf(row).slice(pointer.length + 1))
  return typeof value === 'object' && value !== null && Array.isArray(value) === isItem
}

function nearestAbove(fields: readonly HTMLElement[], pointer: string): HTMLElement | undefined {
  const names = pointer.split('/')
  for (let length = names.length - 1; length > 1; length -= 1) {
    const above = names.slice(0, length).join('/')
    const field = fields.find((row) => atOf(row) === above || atOf(row).startsWith(`${above}/`))
    if (field !== undefined) return field
  }
  return undefined
}

/** Opens what hides a field, and puts the cursor into it. */
export function goTo(field: HTMLElement): void {
  for (
    let inside = field.closest('details');
    inside !== null;
    inside = inside.parentElement?.closest('details') ?? null
  )
    inside.open = true
  const input = field.querySelector<HTMLElement>('input, select, textarea, button')
  input?.focus({ preventScroll: true })
  field.scrollIntoView({ block: 'center' })
}
