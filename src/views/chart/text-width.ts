/** Width of a sign over the size of the type in usual sans-serif faces: mean values, from memory. */
const NARROW = /[iljtfrI.,:;'|!()[\] ]/
const WIDE = /[mwMW@%—]/
const CAPITAL_OR_DIGIT = /[A-Z0-9]/

function signWidth(sign: string): number {
  if (NARROW.test(sign)) return 0.34
  if (WIDE.test(sign)) return 0.9
  if (CAPITAL_OR_DIGIT.test(sign)) return 0.64
  // Signs beyond Latin, Greek and Cyrillic, such as Chinese ones, fill a square.
  return sign > '\u2e80' ? 1 : 0.56
}

/** Width that a text will take about, rather too much than too little: nothing here can measure type. */
export const textWidth = (text: string, size: number): number =>
  [...text].reduce((sum, sign) => sum + signWidth(sign), 0) * size

/** The text, or its beginning with an ellipsis, so that it fits a width. */
export function shortened(text: string, width: number, size: number): string {
  if (textWidth(text, size) <= width) return text
  const signs = [...text]
  while (signs.length > 0 && textWidth(`${signs.join('')}…`, size) > width) signs.pop()
  return `${signs.join('').trimEnd()}…`
}

/** The text in lines of a width, broken between words; a single word that is too long is shortened. */
export function wrapped(text: string, width: number, size: number): string[] {
  const lines: string[] = []
  for (const word of text.split(/\s+/)) {
    const last = lines.at(-1)
    const longer = last === undefined ? word : `${last} ${word}`
    if (last !== undefined && textWidth(longer, size) <= width) lines[lines.length - 1] = longer
    else lines.push(shortened(word, width, size))
  }
  return lines
}
