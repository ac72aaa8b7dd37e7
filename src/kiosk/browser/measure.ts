import type { DriverMeasurementSections } from '../../schema/driver-measurement-sections.ts'
import type { Finding } from '../../schema/frame.ts'
import { ask, isAbort } from './ask.ts'
import { digits } from './digits.ts'
import { type Draft, type Json, valueAt, withValue } from './draft.ts'
import { driverData, driverMoreData } from './driver-fields.ts'
import { markFaults } from './fault-marks.ts'
import { unitText } from './field.ts'
import { keepingFocus } from './focus-kept.ts'
import { rows } from './form-parts.ts'
import { button, make } from './make.ts'
import { bench, sweeps } from './measure-fields.ts'
import type { DriverData } from './measured-data.ts'
import { sentence } from './sentence.ts'

const SWEEPS = ['/drivers/0/freeAir', '/drivers/0/withMass', '/drivers/0/inBox']
/** After this somebody waits. */
const LATE_MS = 1500

type Measured = DriverMeasurementSections & { answer: string; findings: Finding[] }
type Row = DriverMeasurementSections['measured'][number]

/** What the page does with what is typed, and with what is found. */
export interface MeasureEvents {
  typed: (readings: Draft) => void
  use: (data: DriverData) => void
}

/** The way to the data of an unknown driver: a guess from its size at once, the truth from readings. */
export function measureDriver(start: Draft, { typed, use }: MeasureEvents): void {
  let draft = start
  let asking = new AbortController()
  let again = 0
  const found = make('div', { class: 'found', role: 'status' })
  const form = make('div', {})
  const set = (pointer: string, value: Json | undefined) => {
    draft = withValue(draft, pointer, value)
    editing.draft = draft
    typed(draft)
    // What was found from other readings must not be taken for these.
    found.classList.add('stale')
    for (const take of found.querySelectorAll('button')) take.disabled = true
    void work()
  }
  const editing = { draft, set }
  const box = make(
    'dialog',
    { class: 'wide', 'aria-labelledby': 'measure-title' },
    make('h2', { id: 'measure-title', tabindex: '-1' }, 'What is this driver?'),
    make('p', {}, 'A rule and a meter are enough for a guess. Readings of its impedance tell the truth.'),
    form,
    found,
    make(
      'p',
      {},
      button('Close', () => box.close()),
    ),
  )
  form.append(rows(editing, bench, '/drivers/0'))
  form.append(
    make(
      'details',
      { id: 'measure-sweeps', open: SWEEPS.some((at) => valueAt(draft, at) !== undefined) },
      make('summary', {}, 'I have readings'),
      rows(editing, sweeps, '/drivers/0'),
    ),
  )
  box.addEventListener('close', () => {
    asking.abort()
    clearTimeout(again)
    box.remove()
  })
  const say = (...said: HTMLElement[]) => {
    found.classList.remove('stale')
    keepingFocus(
      found,
      () => found.replaceChildren(...said),
      () => 'measure-title',
    )
  }
  const taken = (data: DriverData) => {
    box.close()
    use(data)
  }

  async function work(): Promise<void> {
    asking.abort()
    clearTimeout(again)
    asking = new AbortController()
    const asked = draft
    const late = setTimeout(() => {
      if (found.querySelector('.late') === null)
        found.prepend(make('p', { class: 'late' }, 'Asking the service. What you typed is kept.'))
    }, LATE_MS)
    try {
      const reply = await ask<Measured>('/v1/driver-measurement', draft, asking.signal)
      const faults = markFaults(form, 'faults' in reply ? reply.faults : [], draft)
      if ('answer' in reply) say(...shown(reply.answer, doubtsOf(reply.answer, asked), taken))
      else if ('faults' in reply) say(...faults.map((fault) => make('p', {}, sentence(fault))))
      else {
        say(make('p', {}, `${reply.away} Asking again; what you typed is kept.`))
        again = setTimeout(() => void work(), reply.retryAfterS * 1000)
      }
    } catch (error) {
      if (!isAbort(error)) throw error
    } finally {
      clearTimeout(late)
    }
  }
  document.body.append(box)
  box.showModal()
  void work()
}

/** What speaks against readings that were taken, in a sentence; empty where nothing does. */
function doubtsOf({ findings }: Measured, readings: Draft): string {
  const isChecked = CHECKS.some((at) => valueAt(readings, at) !== undefined)
  if (!isChecked)
    return 'Give the resistance on a meter too: without it nothing tells whether these readings are ohm. Until then they count as a guess.'
  return findings.some(({ severity }) => severity !== 'note')
    ? 'Something speaks against these readings, so they count as a guess: mend that and read again.'
    : ''
}

const CHECKS = ['/drivers/0/meterOhm', '/drivers/0/ratedImpedanceOhm']

function shown(
  { answer, measured, plan, findings }: Measured,
  doubts: string,
  use: (data: DriverData) => void,
): HTMLElement[] {
  const [driver] = measured
  const [how] = plan
  return [
    make('p', {}, answer),
    ...findings.map(({ severity, message }) => make('p', { class: `finding ${severity}` }, message)),
    ...(driver === undefined ? [] : figures(driver, doubts, use)),
    ...(how === undefined ? [] : guessAndSteps(how, use)),
  ]
}

/** Figures that the form has no field for. */
const OTHERS: Readonly<Record<string, [string, string]>> = {
  cmsMmPerN: ['Give of the suspension', 'Cms'],
  rmsKgPerS: ['Losses in the suspension', 'Rms'],
  leExponent: ['How its coil loses towards the treble', 'exponent of Le'],
}

/** A figure in the words of the form, with its trade term. */
function nameOf(figure: string): (string | HTMLElement)[] {
  const field = [...driverData, ...driverMoreData].find(({ at }) => at === `/parameters/${figure}`)
  const [label, term = ''] = OTHERS[figure] ?? [field?.label ?? figure, field?.term]
  return [`${label} `, make('span', { class: 'term' }, term)]
}

/** As they go into the form: nobody reads more than four digits, and no driver holds them. */
const plain = (parameters: Row['parameters']): Draft =>
  JSON.parse(JSON.stringify(parameters), (_, value) => (typeof value === 'number' ? digits(value, 4) : value))

function figures(
  { figures: table, parameters }: Row,
  doubts: string,
  use: (data: DriverData) => void,
): HTMLElement[] {
  const doubted = doubts !== ''
  return [
    make(
      'table',
      {},
      make(
        'tr',
        {},
        make('th', {}, 'Figure'),
        make('th', {}, 'Value'),
        make('th', {}, 'Sure from'),
        make('th', {}, 'to'),
      ),
      table.map(({ figure, value, from, to, unit }) =>
        make(
          'tr',
          {},
          make('th', { scope: 'row' }, ...nameOf(figure)),
          ...[value, from, to].map((number) => make('td', {}, `${digits(number, 3)} ${unitText(unit)}`)),
        ),
      ),
    ),
    make(
      'p',
      {},
      button(
        doubted ? 'Use them as a guess' : 'Use these data',
        () => use({ parameters: plain(parameters), guessed: false, doubted }),
        'primary',
      ),
    ),
    ...(doubted ? [make('p', { class: 'hint' }, doubts)] : []),
  ]
}

function guessAndSteps(
  how: DriverMeasurementSections['plan'][number],
  use: (data: DriverData) => void,
): HTMLElement[] {
  const { guess } = how
  return [
    ...(guess !== null
      ? [
          make(
            'p',
            {},
            'From its size a driver like this is about so; the real one may be far off. Measure before you saw.',
          ),
          make(
            'p',
            {},
            button(
              'Use the guess for now',
              () => use({ parameters: plain(guess.parameters), guessed: true }),
              'primary',
            ),
          ),
        ]
      : []),
    make('h3', {}, 'How to measure it'),
    make('p', {}, `At these frequencies, in Hz: ${how.frequencyHz.map((hz) => digits(hz, 3)).join(', ')}.`),
    make(
      'p',
      {},
      `What is typed above is ohm, not volt: ${digits(how.resistorOhm, 3)}\u00a0Ω times the voltage across the driver, over the voltage across the resistor.`,
    ),
    make(
      'ol',
      {},
      how.steps.map((step) => make('li', {}, step)),
    ),
  ]
}
