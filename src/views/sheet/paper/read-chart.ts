/** An element of a chart with what stands in it. */
export interface Element {
  name: string
  attributes: Readonly<Record<string, string>>
  children: Element[]
  text: string
}

const decoded = (text: string): string =>
  text.replace(/&#(\d+);/g, (_, code: string) => String.fromCodePoint(Number(code)))

const attributesOf = (tag: string): Record<string, string> =>
  Object.fromEntries(
    [...tag.matchAll(/([\w:-]+)="([^"]*)"/g)].map(([, name = '', value = '']) => [name, decoded(value)]),
  )

function begun(tag: string): Element {
  const name = /^<([\w-]+)/.exec(tag)?.[1] ?? ''
  return { name, attributes: attributesOf(tag), children: [], text: '' }
}

/** Takes a tag, or what stands between two, into the elements that are open. */
function take(piece: string, open: Element[], root: Element): void {
  const here = open.at(-1) ?? root
  if (!piece.startsWith('<')) {
    here.text += decoded(piece)
    return
  }
  if (piece.startsWith('</')) {
    open.pop()
    return
  }
  const element = begun(piece)
  here.children.push(element)
  if (!piece.endsWith('/>')) open.push(element)
}

/** The elements of a chart that this service has drawn itself: it knows no other signs than charts are written with. */
export function readChart(svg: string): Element {
  const root: Element = { name: '', attributes: {}, children: [], text: '' }
  const open: Element[] = []
  for (const piece of svg.match(/<[^>]*>|[^<]+/g) ?? []) take(piece, open, root)
  const [chart] = root.children
  if (chart === undefined || open.length > 0) throw new Error('a chart that cannot be read back')
  return chart
}

interface Rule {
  tag: string
  classes: readonly string[]
  declared: Readonly<Record<string, string>>
}

/** How an element looks: the properties that the rules give it. */
export type Look = Readonly<Record<string, string>>

function rulesOf(css: string): Rule[] {
  // What a dark screen changes is of no use on paper.
  const [plain = ''] = css.split('@media')
  return [...plain.matchAll(/([^{}]+)\{([^}]*)\}/g)].flatMap(([, selectors = '', body = '']) => {
    const declared = Object.fromEntries(
      body
        .split(';')
        .map((part) => part.split(':').map((word) => word.trim()))
        .flatMap(([name = '', value]) => (value === undefined ? [] : [[name, value]])),
    )
    return selectors.split(',').map((selector) => {
      const [tag = '', ...classes] = (selector.trim().split(/\s+/).at(-1) ?? '').split('.')
      return { tag, classes, declared }
    })
  })
}

/** Which rule is stronger: more classes, then a tag, then the later one (CSS Selectors 3, section 9). */
const strength = ({ tag, classes }: Rule): number => 2 * classes.length + (tag === '' ? 0 : 1)

/** The looks by the style sheet of a chart. */
export function looksBy(css: string): (element: Element) => Look {
  const rules = rulesOf(css).toSorted((a, b) => strength(a) - strength(b))
  return ({ name, attributes }) => {
    const own = new Set((attributes['class'] ?? '').split(' '))
    const fitting = rules.filter(
      ({ tag, classes }) => (tag === '' || tag === name) && classes.every((one) => own.has(one)),
    )
    return Object.assign({}, ...fitting.map(({ declared }) => declared))
  }
}
