/** Writes the name where it stands in the part of its driver; the form is not built anew while somebody types. */
export function nameParts(form: HTMLElement, index: number, name: string): void {
  const part = form.querySelectorAll('.driver')[index]
  const title = part?.querySelector('h3')
  if (title) title.textContent = name
  for (const button of part?.querySelectorAll('button') ?? []) {
    if (button.textContent.startsWith('Remove ')) button.textContent = `Remove ${name}`
    const label = button.getAttribute('aria-label')
    if (label !== null) button.setAttribute('aria-label', `${button.textContent}: ${name}`)
  }
}
