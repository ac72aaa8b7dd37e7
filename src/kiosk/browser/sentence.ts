/** What the service says to those who write a query or a sheet. */
const FOR_OTHERS = /; in a query or a sheet [^;]*$/

/** What the service says of a fault, as a sentence of the page, which has no query. */
export function sentence({ message: told }: { message: string }): string {
  const message = told.replace(FOR_OTHERS, '')
  const text = message.charAt(0).toUpperCase() + message.slice(1)
  return /[.!?]$/.test(text) ? text : `${text}.`
}
