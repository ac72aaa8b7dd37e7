import { isRecord } from '../api/schema-node.ts'

/** The query that gives the same fields as a body: dotted names, lists of plain values repeated, `none` for null. */
export function exampleQuery(body: unknown): string {
  return pairs(body, '')
    .map(([name, text]) => `${encodeURIComponent(name)}=${encodeURIComponent(text)}`)
    .join('&')
}

function pairs(value: unknown, name: string): [string, string][] {
  const below = (member: string) => (name === '' ? member : `${name}.${member}`)
  if (isRecord(value)) {
    return Object.entries(value).flatMap(([member, inner]) => pairs(inner, below(member)))
  }
  if (!Array.isArray(value)) return [[name, value === null ? 'none' : String(value)]]
  const plain = value.every((item) => typeof item !== 'object')
  return value.flatMap((item, index) => pairs(item, plain ? name : below(String(index))))
}
