import { button, make, part } from './make.ts'

/** What is said once, and work that goes on meanwhile; the one does not push out the other. */
type Line = 'said' | 'work'

const lines = new Map<Line, HTMLElement>()

/** Tells something that belongs to no field, until it is closed or the next is told; gives the way to take this back. */
export const tell = (message: string, ...more: Node[]): (() => void) => tellAs('said', message, more)

/** Tells of work under way, in a line of its own. */
export const tellWork = (message: string, ...more: Node[]): (() => void) => tellAs('work', message, more)

function tellAs(kind: Line, message: string, more: readonly Node[]): () => void {
  const takeBack = () => {
    if (lines.get(kind) === line) drop(kind)
  }
  const line = make('div', {}, make('span', {}, message), ...more)
  if (kind === 'said') line.append(button('Close', takeBack))
  const old = lines.get(kind)
  const hadFocus = old?.contains(document.activeElement)
  lines.set(kind, line)
  // The other line is not touched: it may have the focus.
  if (old === undefined) part('notice', HTMLElement).append(line)
  else old.replaceWith(line)
  part('notice', HTMLElement).hidden = false
  if (hadFocus) line.querySelector('button')?.focus()
  return takeBack
}

export const tellNothing = (): void => drop('said')

function drop(kind: Line): void {
  const line = lines.get(kind)
  if (line === undefined) return
  const hadFocus = line.contains(document.activeElement)
  lines.delete(kind)
  line.remove()
  part('notice', HTMLElement).hidden = lines.size === 0
  if (hadFocus) part('title', HTMLElement).focus({ preventScroll: true })
}
