import { button, make, part } from './make.ts'

/** Tells something that belongs to no field, until it is closed or the next is told. */
export function tell(message: string, ...more: Node[]): void {
  const notice = part('notice', HTMLElement)
  notice.replaceChildren(make('span', {}, message), ...more, button('Close', tellNothing))
  notice.hidden = false
}

export function tellNothing(): void {
  part('notice', HTMLElement).hidden = true
}
