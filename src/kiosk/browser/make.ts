type Attributes = Readonly<Record<string, string | boolean | undefined | ((event: Event) => void)>>
type Child = Node | string | undefined

/** An element with attributes, listeners (names that begin with `on`) and children; text only ever as text. */
export function make<Name extends keyof HTMLElementTagNameMap>(
  name: Name,
  attributes: Attributes = {},
  ...children: readonly (Child | readonly Child[])[]
): HTMLElementTagNameMap[Name] {
  const element = document.createElement(name)
  for (const [key, value] of Object.entries(attributes)) {
    if (typeof value === 'function') element.addEventListener(key.replace(/^on/, ''), value)
    else if (value === true) element.setAttribute(key, '')
    else if (value !== undefined && value !== false) element.setAttribute(key, value)
  }
  element.append(...children.flat().filter((child) => child !== undefined))
  return element
}

/** A button that does something at once. */
export const button = (label: string, press: () => void, kind = '', name?: string): HTMLButtonElement =>
  make('button', { type: 'button', class: kind, 'aria-label': name, onclick: press }, label)

/** An element of the page that is always there. */
export function part<Kind extends HTMLElement>(id: string, kind: new () => Kind): Kind {
  const element = document.getElementById(id)
  if (element instanceof kind) return element
  throw new Error(`the page has no ${kind.name} called ${id}`)
}
