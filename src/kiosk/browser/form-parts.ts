import type { Draft } from './draft.ts'
import type { Field } from './field.ts'
import { type Editing, fieldRow } from './field-row.ts'
import { make } from './make.ts'

/** What the sections can ask of the page beyond one value. */
export interface FormContext extends Editing {
  /** A step that changes the build at several places at once. */
  change: (change: (draft: Draft) => Draft) => void
  /** The design before each step, the last one last. */
  past: readonly Draft[]
  /** Opens the way to driver data for a driver without any. */
  measure: (driver: number) => void
}

/** A card of the form: its usual fields, and those that few need behind one touch. */
export function section(
  title: string,
  editing: Editing,
  fields: readonly Field[],
  more: readonly Field[] = [],
  moreTitle = 'More about it',
): HTMLElement {
  const id = `part-${title.toLowerCase().replaceAll(/\W+/g, '-')}`
  const card = make(
    'section',
    { class: 'card', 'aria-labelledby': id },
    make('h2', { id, tabindex: '-1' }, title),
  )
  card.append(rows(editing, fields))
  if (more.length > 0) card.append(moreOf(`${id}-more`, moreTitle, rows(editing, more)))
  return card
}

export const rows = (editing: Editing, fields: readonly Field[], base = ''): HTMLElement =>
  make(
    'div',
    { class: 'rows' },
    fields.map((field) => fieldRow(field, base, editing)),
  )

export const moreOf = (id: string, title: string, ...content: HTMLElement[]): HTMLElement =>
  make('details', { id }, make('summary', {}, title), ...content)
