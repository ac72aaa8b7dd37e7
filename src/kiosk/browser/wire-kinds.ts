import type { LoadImpedanceSections } from '../../schema/load-impedance.ts'
import { ask, type Faults } from './ask.ts'
import { COIL_OHM, crossed } from './crossed-wiring.ts'
import { type Draft, type Json, valueAt, withValue } from './draft.ts'
import { driversOf } from './drivers-section.ts'
import { sentence } from './fault-marks.ts'
import { headingOf, keepingFocus } from './focus-kept.ts'
import { button, make, part } from './make.ts'
import { tell } from './notice.ts'

/** Usual places to hand over between a small woofer and a tweeter. Source: common practice, no source. */
const CORNERS_HZ = [2500, 3500, 5000]

type Take = (change: (draft: Draft) => Draft) => void

/** Shows ways to begin wiring two kinds of driver in the form, in the place that a missing wiring is told at. */
export function showFirstWirings(faults: Faults, draft: Draft, take: Take): void {
  const place = part('wirings', HTMLElement)
  const ways = firstWirings(faults, draft, take)
  if (ways.length > 0) place.dataset['at'] = '/wiring'
  else delete place.dataset['at']
  keepingFocus(place, () => place.replaceChildren(...ways), headingOf)
}

/** Nothing where a wiring is not what is missing. */
function firstWirings(faults: Faults, draft: Draft, take: Take): HTMLElement[] {
  const ids = driversOf(draft).map((_, index) => valueAt(draft, `/drivers/${index}/id`))
  const [one, other] = ids
  const isMissing = faults.some(({ at }) => at === '/wiring') && valueAt(draft, '/wiring') === undefined
  if (!isMissing || ids.length !== 2 || typeof one !== 'string' || typeof other !== 'string') return []
  const wire = (wiring: Json) => take((design) => withValue(design, '/wiring', wiring))
  return [
    make('h3', {}, 'How to wire them'),
    make(
      'p',
      { class: 'hint' },
      'Two kinds of driver share the notes: a coil keeps the treble from the one, a capacitor the bass from the other. The tweeter takes over at twice its own resonance or above. ',
      make('span', { class: 'term' }, 'first-order crossover'),
    ),
    make(
      'ul',
      { class: 'choices' },
      CORNERS_HZ.map((cornerHz) =>
        choice(
          `Coil and capacitor, handing over at ${cornerHz} Hz:`,
          `Hand over at ${cornerHz} Hz`,
          () => void handOver(cornerHz, draft, wire),
        ),
      ),
      choice(
        'Both straight in parallel: only where both stand the bass; a tweeter does not.',
        'Both straight in parallel',
        () => wire({ parallel: [one, other] }),
      ),
    ),
  ]
}

const choice = (text: string, name: string, press: () => void): HTMLElement =>
  make('li', {}, `${text} `, button('Wire so', press, 'do', `Wire so: ${name}`))

/** Asks the service for the two parts, so that the page works out nothing by itself. */
async function handOver(cornerHz: number, draft: Draft, wire: (wiring: Json) => void): Promise<void> {
  const request = {
    drivers: driversOf(draft),
    amplifier: valueAt(draft, '/amplifier'),
    crossover: { cornerHz, coilResistanceOhm: COIL_OHM },
  }
  const reply = await ask<LoadImpedanceSections>('/v1/load-impedance', request, new AbortController().signal)
  if ('away' in reply) tell(`${reply.away} Try again in a moment.`)
  else if ('faults' in reply) tell(reply.faults.map(sentence).join(' '))
  else {
    const wiring = crossed(reply.answer.crossover)
    if (wiring !== undefined) wire(wiring)
  }
}
