import { WORD } from './json-fault.ts'
import { pointerTo } from './schema-node.ts'

/** An object or list that is open while its text is read. */
interface Holder {
  at: string
  names: Set<string>
  /** Name or number of the member that is being read. */
  member: string | number
}

/**
 * Pointer to a name that stands twice in one object of a JSON text, of which a reader would silently take the last
 * (RFC 8259, section 4: what readers do with it is unpredictable). `sent` is what the text was read as: it has as many
 * members as the text has names, unless one stands twice.
 */
export const repeatedName = (text: string, sent: unknown): string | undefined =>
  namesIn(text) === membersIn(sent) ? undefined : firstRepeated(text)

/** Every name ends in a quote and a colon; such a pair within a text only makes the count too high. */
function namesIn(text: string): number {
  let names = 0
  for (let at = text.indexOf(':'); at >= 0; at = text.indexOf(':', at + 1)) {
    let before = at - 1
    while (isSpace(text.charCodeAt(before))) before -= 1
    if (text[before] === '"') names += 1
  }
  return names
}

const isSpace = (code: number): boolean => code === 0x20 || code === 0x0a || code === 0x0d || code === 0x09

/** Counted without recursion, for nobody has looked yet how deep it goes. */
function membersIn(sent: unknown): number {
  let members = 0
  const holders = [sent]
  for (const holder of holders) {
    if (typeof holder !== 'object' || holder === null) continue
    const isList = Array.isArray(holder)
    for (const member of Object.values(holder)) {
      if (!isList) members += 1
      if (typeof member === 'object') holders.push(member)
    }
  }
  return members
}

/** Reads the words of the text once more, now with what stands where; only where a name may stand twice. */
function firstRepeated(text: string): string | undefined {
  const open: Holder[] = []
  let last = ''
  for (const { groups } of text.matchAll(WORD)) {
    last = groups?.['text'] ?? last
    const sign = groups?.['sign']
    const holder = open.at(-1)
    if (sign === ':' && holder !== undefined) {
      const name = String(JSON.parse(last))
      if (isTaken(name, holder)) return pointerTo(holder.at, name)
    } else if (sign !== undefined) moved(open, sign)
  }
  return undefined
}

/** Whether the object has a member of this name already; else it has now. */
function isTaken(name: string, holder: Holder): boolean {
  const taken = holder.names.has(name)
  holder.names.add(name)
  holder.member = name
  return taken
}

function moved(open: Holder[], sign: string): void {
  const holder = open.at(-1)
  if (sign === '}' || sign === ']') open.pop()
  else if (sign === ',' && typeof holder?.member === 'number') holder.member += 1
  else if (sign === '{' || sign === '[') {
    const at = holder === undefined ? '' : pointerTo(holder.at, holder.member)
    open.push({ at, names: new Set(), member: sign === '{' ? '' : 0 })
  }
}
