import type { Answer } from './ask.ts'
import { sizeWayOf } from './box-section.ts'
import { type Draft, type Json, valueAt, withValue } from './draft.ts'
import { headingOf, keepingFocus } from './focus-kept.ts'
import { button, make, part } from './make.ts'

type Take = (change: (draft: Draft) => Draft) => void

/** Shows in the form what the answer offers: other wirings, and boxes that suit. */
export function showOffers(form: HTMLElement, answer: Answer, draft: Draft, take: Take): void {
  const show = () => {
    const wirings = part('wirings', HTMLElement)
    delete wirings.dataset['at']
    wirings.replaceChildren(...wiringOffers(answer, draft, take))
    part('suited', HTMLElement).replaceChildren(...boxOffers(answer, take))
  }
  keepingFocus(form, show, headingOf)
}

/** Other wirings of the same drivers; the ones the amplifier may drive first. */
function wiringOffers({ alternatives, load }: Answer, draft: Draft, take: Take): HTMLElement[] {
  if (alternatives.length === 0) return []
  const now = JSON.stringify(valueAt(draft, '/wiring') ?? null)
  return [
    make('h3', {}, 'How to wire them'),
    make('p', { class: 'hint' }, `As it stands the load is ${rounded(load.ratedOhm)} Ω on a channel.`),
    make(
      'ul',
      { class: 'choices' },
      alternatives.slice(0, 4).map(({ wiring, text, ratedOhm, mayDrive, levelDb }) => {
        const chosen = JSON.stringify(wiring) === now
        const level = levelDb === null || Math.abs(levelDb) < 0.05 ? '' : `, ${rounded(levelDb)} dB`
        const safe = mayDrive === false ? ', too low for the amplifier' : ''
        return make(
          'li',
          {},
          `${text}: ${rounded(ratedOhm)} Ω${level}${safe} `,
          chosen
            ? make('span', { class: 'chosen' }, 'as it is')
            : button(
                'Wire so',
                () => take((design) => withValue(design, '/wiring', wiring)),
                'do',
                `Wire so: ${text}`,
              ),
        )
      }),
    ),
  ]
}

/** Boxes that suit these drivers. */
function boxOffers({ suitedBoxes }: Answer, take: Take): HTMLElement[] {
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
          make('b', {}, `${box.kind === 'closed' ? 'Closed' : 'With a tube'}, ${plainly(box.alignment)}`),
          ' ',
          make('span', { class: 'term' }, box.alignment),
          ': ',
          `${box.text} `,
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

const rounded = (value: number): number => Number(value.toPrecision(2))

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
