import type { Answer } from './ask.ts'
import { sizedBy, USUAL, unsized } from './box-way.ts'
import { digits } from './digits.ts'
import { type Draft, valueAt, withValue } from './draft.ts'
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
  const shaped = sizedBy(draft, 'netVolumeL', []) ?? unsized(draft)
  const proportions = valueAt(shaped, '/box/proportions') ?? USUAL
  const sized = withValue(
    withValue(shaped, '/box/netVolumeL', digits(netVolumeL ?? 1, 3)),
    '/box/proportions',
    proportions,
  )
  const boxed = withValue(withValue(sized, '/box/kind', kind), '/passiveRadiator', undefined)
  if (kind === 'closed' || tuningHz === null) return withValue(boxed, '/port', undefined)
  const port = valueAt(draft, '/port') === undefined ? withValue(boxed, '/port/innerDiameterMm', 35) : boxed
  return withValue(withValue(port, '/port/lengthMm', undefined), '/port/tuningHz', digits(tuningHz, 3))
}
