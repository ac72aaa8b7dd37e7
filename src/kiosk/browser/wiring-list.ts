import { digits } from './digits.ts'
import { type Draft, type Json, valueAt, withValue } from './draft.ts'
import { type Kind, kindsOf } from './kinds.ts'
import { button, make } from './make.ts'
import { tell } from './notice.ts'
import { type Built, built, isAway } from './wiring-built.ts'
import { type Plan, plansOf } from './wiring-plans.ts'
import { groupsIn, partsIn, wordsOf } from './wiring-tree.ts'

/** What the offers need of the page. */
export interface Wirer {
  draft: Draft
  past: readonly Draft[]
  take: (change: (draft: Draft) => Draft) => void
}

/** After this somebody waits. */
const SOON_MS = 300
/** After this what could not be looked at is looked at again. */
const A_MOMENT_MS = 4000
/** So long nothing is typed before the service is asked for every offer. */
const CALM_MS = 400

/** The list on show: kept while it offers the same, so that nothing jumps while somebody types. */
let shown = { texts: '', of: '', element: make('ul', { class: 'choices' }) }
let wiring: Wirer | undefined
let calm = 0
let looking = new AbortController()
let taking = new AbortController()

/** Ways to wire the drivers, each with its parts and its load as the service has them, and a button that takes it. */
export function showPlans(wirer: Wirer): HTMLElement {
  wiring = wirer
  clearTimeout(calm)
  looking.abort()
  looking = new AbortController()
  const kinds = kindsOf(wirer.draft)
  if (kinds.some(({ driver, each }) => Number.isNaN(each) || !isCount(valueAt(driver, '/count') ?? 1)))
    return make('p', {}, `First say how many there are, from 1 to ${MOST}.`)
  const odd = kinds.filter(({ each }) => !Number.isInteger(each) || each < 1)
  if (odd.length > 0 || new Set(kinds.map(({ id }) => id)).size < kinds.length)
    return make('p', {}, saidOf(odd))
  if (kinds.some(({ driver, each }) => each > Number(valueAt(driver, '/count') ?? 1)))
    return make('p', {}, 'First give every box a channel of the amplifier.')
  if (kinds.some(({ each }) => each > MOST))
    return make('p', {}, `More than ${MOST} of a kind on one channel are no wiring; give them more channels.`)
  const plans = plansOf(kinds, wirer.draft, wirer.past)
  const texts = JSON.stringify(plans)
  const of = heardBy(wirer.draft)
  if (texts !== shown.texts)
    shown = { texts, of, element: make('ul', { class: 'choices' }, plans.map(offer)) }
  // Parts and load that stand there are of the drivers before, until it was looked at again.
  if (of !== shown.of) shown.element.classList.add('stale')
  shown.of = of
  calm = setTimeout(() => void lookAtAll(plans, wirer, looking.signal), CALM_MS)
  return shown.element
}

/** As many as the service takes of a kind. */
const MOST = 16

const isCount = (count: Json): boolean =>
  Number.isInteger(Number(count)) && Number(count) >= 1 && Number(count) <= MOST

const heardBy = (draft: Draft): string =>
  JSON.stringify(['/drivers', '/amplifier'].map((at) => valueAt(draft, at) ?? null))

/** Marks parts and loads that are of other drivers or another amplifier. */
export function markOldWirings(draft: Draft): void {
  if (heardBy(draft) !== shown.of) shown.element.classList.add('stale')
}

const saidOf = (odd: readonly Kind[]): string =>
  odd.length === 0
    ? 'Two drivers have the same name; give each its own.'
    : `${odd.map(({ id }) => id).join(' and ')}: the channels of a box cannot share them evenly. Change how many there are, the boxes or the channels.`

const offer = (plan: Plan): HTMLElement =>
  make(
    'li',
    {},
    make('span', {}, make('b', {}, plan.text), make('span', {})),
    button('Wire so', () => void wire(plan), 'do', `Wire so: ${plan.text}`),
  )

async function wire(plan: Plan): Promise<void> {
  if (wiring === undefined) return
  const { draft, take } = wiring
  taking.abort()
  taking = new AbortController()
  const { signal } = taking
  let takeBack = (): void => undefined
  const stop = () => {
    clearTimeout(slow)
    takeBack()
  }
  signal.addEventListener('abort', stop)
  const slow = setTimeout(() => {
    takeBack = tell(
      'The service sizes the parts…',
      button('Stop', () => taking.abort()),
    )
  }, SOON_MS)
  try {
    const { wiring: chosen } = await built(plan, draft, signal)
    if (!signal.aborted) take((design) => withValue(design, '/wiring', chosen))
  } catch (error) {
    if (!signal.aborted) tell(error instanceof Error ? error.message : String(error))
  } finally {
    stop()
  }
}

/** For another design: no wiring on its way comes into it. */
export function forgetWirings(): void {
  clearTimeout(calm)
  looking.abort()
  taking.abort()
  wiring = undefined
}

async function lookAtAll(plans: readonly Plan[], wirer: Wirer, signal: AbortSignal): Promise<void> {
  const { element } = shown
  let wasAway = false
  await Promise.all(
    plans.map(async (plan, index) => {
      const one = await built(plan, wirer.draft, signal).catch((error: unknown) => {
        wasAway ||= isAway(error)
        return undefined
      })
      const offered = element.children[index]
      const place = offered?.querySelector('span span')
      if (signal.aborted || !place) return
      place.textContent = one === undefined ? '' : saidIn(one)
      offered?.classList.toggle('too-low', one?.answer?.load.mayDrive === false)
    }),
  )
  if (signal.aborted) return
  element.classList.remove('stale')
  if (wasAway && element.isConnected)
    calm = setTimeout(() => void lookAtAll(plans, wirer, signal), A_MOMENT_MS)
}

/** Parts to buy, the load, and what the service warns of. */
function saidIn({ wiring: chosen, answer }: Built): string {
  const parts = partsIn(chosen)
  const bought = `: ${parts.length === 0 ? wordsOf(chosen) : [...parts, ...groupsIn(chosen)].join(', ')}`
  if (answer === undefined) return bought
  const { load, findings } = answer
  const warned = findings.filter(
    ({ at, severity, code }) => at.startsWith('/wiring') && severity !== 'note' && code !== TOO_LOW,
  )
  const safe = load.mayDrive === false ? ', too low for the amplifier' : ''
  return [
    `${bought}; ${digits(load.ratedOhm, 2)}\u00a0Ω, lowest ${digits(load.minimumOhm, 2)}\u00a0Ω${safe}.`,
    ...warned.map(({ message }) => message),
  ].join(' ')
}

/** Said in short here. */
const TOO_LOW = 'load-below-amplifier-minimum'
