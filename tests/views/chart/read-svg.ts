/** An element of a picture as a reader without our code sees it. */
export interface Element {
  name: string
  attributes: Record<string, string>
  text: string
}

const TAG = /<(\/?)([A-Za-z][\w:-]*)((?:\s+[\w:-]+="[^"<]*")*)\s*(\/?)>/g
const ATTRIBUTE = /([\w:-]+)="([^"]*)"/g
const REFERENCE = /&(?:#(\d+)|#x([\da-f]+)|(amp|lt|gt|quot|apos));/gi
const NAMED: Record<string, string> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" }

/**
 * Reads a document by the rules of XML 1.0 (W3C, fifth edition: section 2.1 one root and elements nested, 2.2 signs
 * allowed, 2.4 no bare `<` or `&`, 3.1 attributes unique), as far as pictures use them. Throws where it is broken.
 */
export function readXml(xml: string): Element[] {
  const open: Element[] = []
  const all: Element[] = []
  let at = 0
  for (const found of xml.matchAll(TAG)) {
    takeText(xml.slice(at, found.index), open.at(-1))
    at = found.index + found[0].length
    const [, closing, name = '', attributes = '', empty] = found
    if (closing === '/') {
      end(open, name)
      continue
    }
    if (open.length === 0 && all.length > 0) throw new Error(`a second root <${name}>`)
    const element = { name, attributes: attributesOf(attributes), text: '' }
    all.push(element)
    if (empty !== '/') open.push(element)
  }
  takeText(xml.slice(at), undefined)
  if (open.length > 0 || all.length === 0)
    throw new Error(`${open.length} of ${all.length} elements not ended`)
  return all
}

function end(open: Element[], name: string): void {
  const ended = open.pop()
  if (ended?.name !== name) throw new Error(`</${name}> ends <${ended?.name}>`)
}

/** Text between tags; what is left of a broken tag is found here by its `<`. */
function takeText(text: string, inside: Element | undefined): void {
  if (text.includes('<')) throw new Error(`no tag: ${text}`)
  if (inside !== undefined) inside.text += decoded(text)
  else if (text.trim() !== '') throw new Error(`text outside the root: ${text}`)
}

function attributesOf(text: string): Record<string, string> {
  const found: Record<string, string> = {}
  for (const [, name = '', value = ''] of text.matchAll(ATTRIBUTE)) {
    if (name in found) throw new Error(`${name} stands twice`)
    found[name] = decoded(value)
  }
  return found
}

function decoded(text: string): string {
  if (text.replace(REFERENCE, '').includes('&')) throw new Error(`a bare & in ${text}`)
  for (const sign of text) {
    const code = sign.codePointAt(0) ?? 0
    const allowed =
      code === 9 || code === 10 || code === 13 || (code >= 32 && (code < 0xd800 || code > 0xdfff))
    if (!allowed || code === 0xfffe || code === 0xffff) throw new Error(`sign ${code} is not allowed`)
  }
  return text.replace(REFERENCE, (_, decimal, hex, name) =>
    name === undefined
      ? String.fromCodePoint(decimal === undefined ? Number.parseInt(hex, 16) : Number(decimal))
      : (NAMED[name] ?? ''),
  )
}

export const named = (elements: readonly Element[], name: string, kind?: string): Element[] =>
  elements.filter(
    (element) =>
      element.name === name && (kind === undefined || element.attributes['class']?.split(' ').includes(kind)),
  )

/** Points of a path of straight pieces, one list for each move. */
export const piecesOf = (path: string): [number, number][][] =>
  path
    .split('M')
    .filter((piece) => piece !== '')
    .map((piece) =>
      piece
        .replace('Z', '')
        .split('L')
        .map((point): [number, number] => {
          const [x = Number.NaN, y = Number.NaN] = point.split(',').map(Number)
          return [x, y]
        }),
    )

/** Where the frame of the first field lies. */
export function frameOf(elements: readonly Element[]) {
  const [frame] = named(elements, 'rect', 'frame')
  const [x, y, width, height] = ['x', 'y', 'width', 'height'].map((name) => Number(frame?.attributes[name]))
  return { left: x ?? 0, right: (x ?? 0) + (width ?? 0), top: y ?? 0, bottom: (y ?? 0) + (height ?? 0) }
}
