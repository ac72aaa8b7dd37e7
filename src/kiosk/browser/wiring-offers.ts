import type { Answer, Faults } from './ask.ts'
import { digits } from './digits.ts'
import { type Draft, valueAt, withValue } from './draft.ts'
import { headingOf, keepingFocus } from './focus-kept.ts'
import { fits, kindsOf } from './kinds.ts'
import { button, make, part } from './make.ts'
import { sentence } from './sentence.ts'
import { showPlans, type Wirer } from './wiring-list.ts'
import { wordsOf } from './wiring-tree.ts'

/** A driver that has no place in the wiring yet. */
const isUnwired = (draft: Draft, { at }: Faults[number]): boolean => {
  const driver = valueAt(draft, at)
  return (
    /^\/drivers\/\d+$/.test(at) && typeof driver === 'object' && driver !== null && !Array.isArray(driver)
  )
}
const ABOUT_WIRING = /^\/wiring|^\/drivers\/\d+\/count$/

/** A driver's name stands in the wiring too: what is wrong with it is told where it is typed. */
export const toldOnce = (faults: Faults): Faults => {
  const ofNames = faults.filter(({ at }) => /^\/drivers\/\d+\/id$/.test(at)).map(({ message }) => message)
  return faults.filter(({ at, message }) => !(at.startsWith('/wiring') && ofNames.includes(message)))
}

/** The faults as the page places them: a driver without a place in the wiring is told where it can be wired, once. */
export function wiringFaultsPlaced(faults: Faults, draft: Draft): { faults: Faults; draft: Draft } {
  const unwired = faults.filter((fault) => isUnwired(draft, fault))
  const [first] = unwired
  if (first === undefined || valueAt(draft, '/wiring') === undefined) return { faults, draft }
  const others = faults.filter((fault) => !unwired.includes(fault))
  if (others.some(({ at }) => at.startsWith('/wiring'))) return { faults: others, draft }
  // Nothing is wrong with what is wired: the rest is still needed.
  return { faults: [...others, { ...first, at: '/wiring' }], draft: withValue(draft, '/wiring', undefined) }
}

/** Offers ways to wire the drivers where a wiring is missing or does not fit them, and nothing else. */
export function showFirstWirings(faults: Faults, wirer: Wirer): void {
  const { draft } = wirer
  const wiring = valueAt(draft, '/wiring') ?? undefined
  const kinds = kindsOf(draft)
  const unfit =
    wiring !== undefined && kinds.every(({ each }) => Number.isFinite(each)) && !fits(wiring, kinds)
  const about = faults.filter((fault) =>
    wiring === undefined ? fault.at === '/wiring' : ABOUT_WIRING.test(fault.at) || isUnwired(draft, fault),
  )
  const isOpen = about.length > 0 || unfit
  const place = part('wirings', HTMLElement)
  if (isOpen) place.dataset['at'] = '/wiring'
  else delete place.dataset['at']
  const said =
    wiring === undefined
      ? [
          'Kinds of driver share the notes: a coil keeps the treble from the one, a capacitor the bass from the other. A tweeter takes over at twice its own resonance or above. ',
          make('span', { class: 'term' }, 'first-order crossover'),
        ]
      : [`${about.map(sentence).join(' ')} What was wired stays until you choose: ${wordsOf(wiring)}.`]
  keepingFocus(
    place,
    () =>
      place.replaceChildren(
        ...(isOpen ? [make('h3', {}, 'How to wire them'), make('p', { class: 'hint' }, ...said)] : []),
        ...(isOpen ? [showPlans(wirer)] : []),
      ),
    headingOf,
  )
}

/** Shows how the drivers are wired, and other ways: those of the service, and behind one touch those with a crossover. */
export function showWirings(answer: Answer, wirer: Wirer): void {
  const place = part('wirings', HTMLElement)
  delete place.dataset['at']
  place.replaceChildren(...wiringsOf(answer, wirer))
}

/** Before the first answer to a design. */
export const showNoWirings = (): void => part('wirings', HTMLElement).replaceChildren()

function wiringsOf({ alternatives, load }: Answer, wirer: Wirer): HTMLElement[] {
  const { draft, take } = wirer
  const several = kindsOf(draft).length > 1
  const wiring = valueAt(draft, '/wiring')
  if (alternatives.length === 0 && !several) return []
  const now = wiring === undefined ? '' : `It is wired so: ${wordsOf(wiring)}. `
  // Loudest first as they come, but what the amplifier may not drive last.
  const safeFirst = [...alternatives].sort(
    (a, b) => Number(b.mayDrive !== false) - Number(a.mayDrive !== false),
  )
  const offers = safeFirst.slice(0, 4).map(({ wiring: other, text, ratedOhm, mayDrive, levelDb }) => {
    const level = levelDb === null || Math.abs(levelDb) < 0.05 ? '' : `, ${digits(levelDb, 2)} dB`
    const safe = mayDrive === false ? ', too low for the amplifier' : ''
    const wire = () => take((design) => withValue(design, '/wiring', other))
    return make(
      'li',
      {},
      make('span', {}, `${text}: ${digits(ratedOhm, 2)}\u00a0Ω${level}${safe}`),
      button('Wire so', wire, 'do', `Wire so: ${text}`),
    )
  })
  return [
    make('h3', {}, 'How to wire them'),
    make('p', { class: 'hint' }, `${now}The load is ${digits(load.ratedOhm, 2)}\u00a0Ω on a channel.`),
    ...(offers.length > 0 ? [make('ul', { class: 'choices' }, offers)] : []),
    ...(several ? [otherWays(wirer)] : []),
  ]
}

/** Asked for when it is opened; it stays open while the answer changes. */
function otherWays(wirer: Wirer): HTMLElement {
  const wasOpen = document.querySelector<HTMLDetailsElement>('#more-wirings')?.open === true
  const more = make(
    'details',
    { id: 'more-wirings', open: wasOpen },
    make('summary', {}, 'Wire them another way'),
  )
  const show = () => {
    if (more.open && more.childElementCount === 1) more.append(showPlans(wirer))
  }
  more.addEventListener('toggle', show)
  show()
  return more
}
