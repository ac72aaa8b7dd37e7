/** Text made safe to stand in HTML, in an attribute too. */
export const htmlText = (text: string): string =>
  text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`)

export const paragraph = (text: string): string => `<p>${htmlText(text)}</p>`

export const list = (items: readonly string[], kind: 'ul' | 'ol' = 'ul'): string =>
  items.length === 0 ? '' : `<${kind}>${items.map((item) => `<li>${htmlText(item)}</li>`).join('')}</${kind}>`

/** A table with a head; cells of numbers stand to the right. */
export function table(head: readonly string[], rows: readonly (readonly (string | number)[])[]): string {
  if (rows.length === 0) return ''
  const cell = (value: string | number) =>
    typeof value === 'number' ? `<td class="number">${value}</td>` : `<td>${htmlText(value)}</td>`
  const body = rows.map((row) => `<tr>${row.map(cell).join('')}</tr>`).join('')
  return `<table><thead><tr>${head.map((name) => `<th scope="col">${htmlText(name)}</th>`).join('')}</tr></thead><tbody>${body}</tbody></table>`
}
