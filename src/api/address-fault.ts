const LONGEST_ECHO = 60

/** Says which escape of an address stands for no character. */
export function addressFault(url: string): string {
  const escapes = (url.split('?')[0] ?? '').match(/%(?:[\da-fA-F]{2}(?:%[\da-fA-F]{2})*|.{0,2})/g) ?? []
  const broken = escapes.find((written) => !isText(written))
  if (broken === undefined) return 'The address cannot be read.'
  return `The address holds ${broken.slice(0, LONGEST_ECHO)}, which stands for no character in UTF-8; a % itself is written %25.`
}

function isText(written: string): boolean {
  try {
    decodeURIComponent(written)
    return true
  } catch {
    return false
  }
}
