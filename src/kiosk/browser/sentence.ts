import { COMMAS_READ } from '../../api/comma-hint.ts'

/** What the service says of a fault, as a sentence of the page, which has no query. */
export function sentence({ message: told }: { message: string }): string {
  const message = told.replace(`; ${COMMAS_READ}`, '')
  const text = message.charAt(0).toUpperCase() + message.slice(1)
  return /[.!?]$/.test(text) ? text : `${text}.`
}
