const nameOf = (element: Element): string => element.getAttribute('aria-label') ?? element.textContent

/** Builds a part of the page anew and puts the focus back on what has the same id or name, else on a heading near it. */
export function keepingFocus(
  root: HTMLElement,
  build: () => void,
  nearest: (lost: Element) => string = () => 'verdict-text',
): void {
  const before = document.activeElement
  if (before === null || !root.contains(before)) {
    build()
    return
  }
  const [name, near] = [nameOf(before), nearest(before)]
  build()
  if (before.isConnected && document.activeElement === before) return
  const same =
    before.id === ''
      ? [...root.querySelectorAll('button')].find((one) => nameOf(one) === name)
      : document.getElementById(before.id)
  const next = same ?? document.getElementById(near)
  next?.focus({ preventScroll: true })
}

/** A place near an element that is there after it: among the drivers one close by, else the heading of the card. */
export const headingOf = (element: Element): string =>
  element.closest('#wirings')?.id ??
  (element.closest('.driver, #lost-wiring') === null ? undefined : 'add-driver') ??
  element.closest('section')?.getAttribute('aria-labelledby') ??
  'title'
