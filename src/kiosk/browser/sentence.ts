/** What the service says of a fault, as a sentence of the page. */
export function sentence({ message }: { message: string }): string {
  const text = message.charAt(0).toUpperCase() + message.slice(1)
  return /[.!?]$/.test(text) ? text : `${text}.`
}
