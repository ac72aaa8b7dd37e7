import type { Answer } from './ask.ts'
import { sizeWayOf } from './box-way.ts'
import { type Draft, type Json, valueAt, withValue } from './draft.ts'
import { headingOf, keepingFocus } from './focus-kept.ts'
import { button, make, part } from './make.ts'
import type { Wirer } from './wiring-list.ts'
import { showWirings } from './wiring-offers.ts'

/** Shows in the form what the answer offers: other wirings, and boxes that suit. */
export function showOffers(form: HTMLElement, answer: Answer, wirer: Wirer): void {
  const show = () => {
    showWirings(answer, wirer)
    part('suited', HTMLElement).replaceChildren(...boxOffers(answer, wirer.take))
  }
  keepingFocus(form, show, headingOf)
}

/** Boxes that suit these drivers. */
function boxOffers({ suitedBoxes }: Answer, take: Wirer['take']): HTMLElement[] {
  const real = suitedBoxes.filter(({ netVolumeL }) => netVolumeL !== null)
  if (real.length === 0) return []
  return [
    make('h3', {}, 'Boxes that suit these drivers'),
    make(
      'ul',
      { class: 'choices' },
      real.slice(0, 5).map((box) =>
        make(
          'li',
          {},
          make(
            'span',
            {},
            make('b', {}, `${box.kind === 'closed' ? 'Closed' : 'With a tube'}, ${plainly(box.alignment)}`),
            ' ',
            make('span', { class: 'term' }, box.alignment),
            `: ${box.text}`,
          ),
          button(
            'Take this box',
            () => take((draft) => boxTaken(draft, box)),
            'do',
            `Take this box: ${box.text}`,
          ),
        ),
      ),
    ),
  ]
}

/** What the named boxes sound like, in plain words. */
const SOUNDS: readonly [RegExp, string][] = [
  [/^critically damped/, 'driest and largest'],
  [/^Bessel/, 'dry'],
  [/^Butterworth/, 'even down to its lowest note'],
  [/^Chebyshev/, 'small, a little boom'],
  [/^QB3/, 'small and tight'],
  [/^B4/, 'even down to its lowest note'],
  [/^C4/, 'deep, a slight ripple'],
  [/^BL4/, 'dry'],
]

const plainly = (alignment: string): string =>
  SOUNDS.find(([name]) => name.test(alignment))?.[1] ?? 'as wished'

/** The box by its volume, in the proportions it has. */
function boxTaken(draft: Draft, { kind, netVolumeL, tuningHz }: Answer['suitedBoxes'][number]): Draft {
  const proportions = proportionsOf(draft)
  const cleared = ['outer', 'inner'].reduce((left, name) => withValue(left, `/box/${name}`, undefined), draft)
  const sized = withValue(
    withValue(cleared, '/box/netVolumeL', threeDigits(netVolumeL ?? 1)),
    '/box/proportions',
    proportions,
  )
  const boxed = withValue(withValue(sized, '/box/kind', kind), '/passiveRadiator', undefined)
  if (kind === 'closed' || tuningHz === null) return withValue(boxed, '/port', undefined)
  const port = valueAt(draft, '/port') === undefined ? withValue(boxed, '/port/innerDiameterMm', 35) : boxed
  return withValue(withValue(port, '/port/lengthMm', undefined), '/port/tuningHz', threeDigits(tuningHz))
}

const threeDigits = (value: number): number => Number(value.toPrecision(3))

function proportionsOf(draft: Draft): Json {
  const way = sizeWayOf(draft)
  const side = (name: string) => Number(valueAt(draft, `/box/${way}/${name}`))
  const [width, height, depth] = [side('widthMm'), side('heightMm'), side('depthMm')]
  if (way !== 'netVolumeL' && width > 0 && height > 0 && depth > 0)
    return { width: 1, height: threeDigits(height / width), depth: threeDigits(depth / width) }
  return valueAt(draft, '/box/proportions') ?? { width: 1, height: 1.6, depth: 1.25 }
}
