/** An element of a picture with what stands in it. */
export interface Element {
  name: string
  attributes: Record<string, string>
  children: Element[]
  text: string
}

const decoded = (text: string): string =>
  text.replace(/&#(\d+);/g, (_, code: string) => String.fromCodePoint(Number(code)))

const TAG = /^<(\/?)([a-zA-Z]+)((?:\s+[\w:-]+="[^"<]*")*)\s*(\/?)>$/

/** Takes one piece of the source, a tag or what stands between two, into the elements that are open. */
function take(piece: string, open: Element[]): void {
  const here = open.at(-1)!
  if (!piece.startsWith('<')) {
    if (/&(?!#\d+;)/.test(piece) || piece.includes('>')) throw new Error(`bare sign in "${piece}"`)
    here.text += decoded(piece)
    return
  }
  const [, closing, name = '', attributes = '', single] = TAG.exec(piece) ?? []
  if (name === '') throw new Error(`no tag: "${piece.slice(0, 60)}"`)
  if (closing === '/') {
    if (open.pop()?.name !== name) throw new Error(`</${name}> closes <${here.name}>`)
    return
  }
  const element: Element = { name, attributes: attributesOf(attributes), children: [], text: '' }
  here.children.push(element)
  if (single !== '/') open.push(element)
}

/** Reads the XML that a picture is made of and throws where it is not well formed: tags that do not close, bare signs. */
export function readSvg(source: string): Element {
  const root: Element = { name: '', attributes: {}, children: [], text: '' }
  const open = [root]
  for (const piece of source.match(/<[^>]*>?|[^<]+/g) ?? []) take(piece, open)
  if (open.length !== 1 || root.children.length !== 1) throw new Error('not one whole element')
  return root.children[0]!
}

function attributesOf(text: string): Record<string, string> {
  const pairs = [...text.matchAll(/([\w:-]+)="([^"]*)"/g)].map(([, name = '', value = '']) => [
    name,
    decoded(value),
  ])
  return Object.fromEntries(pairs)
}

/** An element and all below it. */
export const all = (element: Element): Element[] => [element, ...element.children.flatMap(all)]

export const named = (element: Element, name: string): Element[] =>
  all(element).filter((one) => one.name === name)

/** Corners of a path of straight lines, y upwards from the lower edge of a picture of this height. */
export const cornersOf = ({ attributes }: Element, heightMm: number): { x: number; y: number }[] =>
  [...(attributes['d'] ?? '').matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => ({
    x: Number(x),
    y: heightMm - Number(y),
  }))
