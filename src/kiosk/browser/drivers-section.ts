import { type Draft, valueAt, withValue } from './draft.ts'
import { driverCount, driverData, driverMoreData, driverName, driverSize, ownBack } from './driver-fields.ts'
import { type FormContext, moreOf, rows } from './form-parts.ts'
import { driversOf, nameOf } from './kinds.ts'
import { button, make } from './make.ts'
import { type Removal, withoutDriver } from './removed-driver.ts'

/** Where ways to wire them are shown; one and the same in every form, so that it does not fold while the answer is on its way. */
const wirings = make('div', { id: 'wirings', class: 'offers', tabindex: '-1' })

/** The last driver that was taken out; told while drivers and wiring are as they were left. */
let removal: Removal | undefined

/** For another design: what was taken out of the one before does not come back in it. */
export const forgetRemoved = (): void => {
  removal = undefined
}

export function driversSection(context: FormContext): HTMLElement {
  const { draft, change } = context
  const drivers = driversOf(draft)
  return make(
    'section',
    { class: 'card', 'aria-labelledby': 'part-drivers' },
    make('h2', { id: 'part-drivers', tabindex: '-1' }, 'Loudspeaker drivers'),
    drivers.map((_, index) => driverPart(context, index, drivers.length > 1)),
    make(
      'p',
      { 'data-list': '/drivers', 'data-label': 'Loudspeaker drivers' },
      make(
        'button',
        {
          type: 'button',
          id: 'add-driver',
          onclick: () => change((now) => withAnotherDriver(now, context.past)),
        },
        'Add another kind of driver',
      ),
    ),
    lostWiring(context),
    wirings,
  )
}

/** What went with a driver that was taken out, at the place, and a way back. */
function lostWiring({ draft, change }: FormContext): HTMLElement | undefined {
  if (removal === undefined || removal.said === '' || partsWired(draft) !== partsWired(removal.draft))
    return undefined
  const { said, back } = removal
  return make(
    'p',
    { id: 'lost-wiring', class: 'lost' },
    `${said} `,
    button('Bring it back', () => change(back), 'do'),
  )
}

const partsWired = (draft: Draft): string =>
  JSON.stringify([
    valueAt(draft, '/wiring') ?? null,
    ...driversOf(draft).map((_, index) => nameOf(draft, index)),
  ])

function driverPart(context: FormContext, index: number, several: boolean): HTMLElement {
  const { draft, change, measure } = context
  const base = `/drivers/${index}`
  const name = nameOf(draft, index)
  const more = rows(context, driverMoreData, base)
  const remove = () => {
    removal = withoutDriver(context.draft, index, context.past)
    change(() => removal?.draft ?? draft)
    // A driver is several screens high on a phone: what is told below it comes into view.
    document.getElementById('add-driver')?.scrollIntoView({ block: 'center' })
  }
  return make(
    'div',
    { class: 'driver' },
    several ? make('h3', {}, name) : undefined,
    rows(context, [driverName, driverCount, ...(several ? [ownBack] : [])], base),
    make(
      'p',
      { class: 'unknown' },
      'No data sheet? ',
      button(
        'Measure or guess this driver',
        () => measure(index),
        'primary',
        several ? `Measure or guess this driver: ${name}` : undefined,
      ),
    ),
    rows(context, driverData, base),
    moreOf(`more-data-${index}`, 'More data, if you have them', more),
    moreOf(`more-size-${index}`, 'Its measures, for holes and fit', rows(context, driverSize, base)),
    several ? button(`Remove ${name}`, remove) : undefined,
  )
}

/**
 * The wiring stays: what is wired is wired, and the new driver is asked a place in it. It gets a name that no other had
 * before it, for readings are kept by name.
 */
function withAnotherDriver(draft: Draft, past: readonly Draft[]): Draft {
  const count = driversOf(draft).length
  const taken = [...past, draft].flatMap((one) => driversOf(one).map((_, index) => nameOf(one, index)))
  const names = ['main', 'second', 'third', 'fourth']
  const more = taken.map((_, i) => `driver ${count + 1 + i}`)
  const id = [...names.slice(count), ...names, ...more].find((name) => !taken.includes(name))
  return withValue(draft, '/drivers/-', { id: id ?? `driver ${taken.length + count + 1}`, parameters: {} })
}
