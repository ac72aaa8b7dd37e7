/** One word of JSON (RFC 8259, Bray, 2017): a sign, a text, or a number or constant with nothing stuck to it. */
export const WORD =
  /[ \t\n\r]*(?:(?<sign>[{}[\],:])|(?<text>"[ !#-[\]-\uffff]*(?:\\(?:["\\/bfnrt]|u[\da-fA-F]{4})[ !#-[\]-\uffff]*)*")|(?:true|false|null|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?)(?![\w.+-]))/gy

type Expected =
  | 'a value'
  | 'a value or ]'
  | 'a name in double quotes'
  | 'a name in double quotes or }'
  | 'a colon'
  | 'a comma or }'
  | 'a comma or ]'
  | 'the end'

type Closing = '}' | ']'

/** A word opens or closes an object or list, is a whole value, or lets something else be expected. */
type Move = 'open' | 'close' | 'whole' | Expected

const VALUE = { '{': 'open', '[': 'open', text: 'whole', plain: 'whole' } as const

/** The words that may stand where something is expected. */
const MOVES: Record<Expected, Record<string, Move>> = {
  'a value': VALUE,
  'a value or ]': { ...VALUE, ']': 'close' },
  'a name in double quotes': { text: 'a colon' },
  'a name in double quotes or }': { text: 'a colon', '}': 'close' },
  'a colon': { ':': 'a value' },
  'a comma or }': { ',': 'a name in double quotes', '}': 'close' },
  'a comma or ]': { ',': 'a value', ']': 'close' },
  'the end': {},
}

/** Usual mistakes by how the rest of the body begins, where it is a value or a name that was expected. */
const MISTAKES: { begins: RegExp; expected: RegExp; cause: string }[] = [
  {
    begins: /^[+-]?(?:NaN|Infinity)\b/,
    expected: /value/,
    cause: 'JSON has no NaN and no Infinity; leave the field out or give a number',
  },
  { begins: /^\/[/*]/, expected: /./, cause: 'JSON has no comments' },
  { begins: /^'/, expected: /value|name/, cause: 'names and text stand in double quotes' },
  { begins: /^[A-Za-z_]/, expected: /name/, cause: 'names stand in double quotes' },
  { begins: /^\d/, expected: /name/, cause: 'a number takes a decimal point, not a comma' },
  { begins: /^[}\]]/, expected: /value$|quotes$/, cause: 'there is a comma too many, or a value is missing' },
  {
    begins: /^"/,
    expected: /value|name/,
    cause: 'this text has no closing quote, a line break or a backslash that escapes nothing',
  },
  { begins: /^[+.\d-]/, expected: /value/, cause: 'a number is written like 12, 0.5 or -3e-2' },
]

/** Says where a text that is no JSON stops being it, and why; JSON.parse says where only sometimes. */
export function jsonFault(text: string): string {
  const open: Closing[] = []
  let expected: Expected = 'a value'
  let end = 0
  for (const { 0: whole, groups } of text.matchAll(WORD)) {
    const word = groups?.['sign'] ?? (groups?.['text'] === undefined ? 'plain' : 'text')
    const move = MOVES[expected][word]
    if (move === undefined) break
    expected = afterWord(move, word, open)
    end += whole.length
  }
  const rest = text.slice(end).replace(/^[ \t\n\r]+/, '')
  const lines = text.slice(0, text.length - rest.length).split('\n')
  const place = `line ${lines.length}, column ${(lines.at(-1) ?? '').length + 1}`
  return `The body is not JSON at ${place}: ${causeOf(rest, expected)}.`
}

function causeOf(rest: string, expected: Expected): string {
  if (rest === '') return `it ends where ${expected} is expected`
  const known = MISTAKES.find((mistake) => mistake.begins.test(rest) && mistake.expected.test(expected))
  const found = /^"?\w{1,20}"?|^./su.exec(rest)?.[0] ?? ''
  return known?.cause ?? `${expected} is expected, not ${found.replace(/[\p{C}\p{Z}]/u, 'an invisible sign')}`
}

/** What may stand after a word was taken. */
function afterWord(move: Move, word: string, open: Closing[]): Expected {
  if (move === 'open') {
    open.push(word === '{' ? '}' : ']')
    return word === '{' ? 'a name in double quotes or }' : 'a value or ]'
  }
  if (move === 'close') open.pop()
  return move === 'close' || move === 'whole' ? afterValue(open) : move
}

function afterValue(open: readonly Closing[]): Expected {
  const closing = open.at(-1)
  return closing === undefined ? 'the end' : `a comma or ${closing}`
}
