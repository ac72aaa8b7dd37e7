import { button, make, part } from './make.ts'

let told = 0

/** Tells something that belongs to no field, until it is closed or the next is told; gives the way to take this back. */
export function tell(message: string, ...more: Node[]): () => void {
  told += 1
  const mine = told
  const notice = part('notice', HTMLElement)
  notice.replaceChildren(make('span', {}, message), ...more, button('Close', tellNothing))
  notice.hidden = false
  return () => {
    if (mine === told) tellNothing()
  }
}

export function tellNothing(): void {
  part('notice', HTMLElement).hidden = true
}
