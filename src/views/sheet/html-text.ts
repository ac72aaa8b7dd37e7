import { escaped } from '../markup-text.ts'
import type { Column } from './block.ts'

export const paragraph = (text: string): string => `<p>${escaped(text)}</p>`

export const list = (items: readonly string[]): string =>
  items.length === 0 ? '' : `<ul>${items.map((item) => `<li>${escaped(item)}</li>`).join('')}</ul>`

/** A table with a head, which is repeated on every page; columns of numbers stand to the right. */
export function table(head: readonly Column[], rows: readonly (readonly string[])[]): string {
  if (rows.length === 0) return ''
  const kind = (column: number) => (head[column]?.isNumber === true ? ' class="number"' : '')
  const body = rows
    .map(
      (row) => `<tr>${row.map((cell, column) => `<td${kind(column)}>${escaped(cell)}</td>`).join('')}</tr>`,
    )
    .join('')
  const titles = head.map(({ title }, column) => `<th scope="col"${kind(column)}>${escaped(title)}</th>`)
  const widths = head.map(({ share }) => `<col style="width:${Math.round(100 * share)}%">`).join('')
  return `<table><colgroup>${widths}</colgroup><thead><tr>${titles.join('')}</tr></thead><tbody>${body}</tbody></table>`
}
