import type { Answer } from './ask.ts'
import type { Change, Draft } from './draft.ts'
import { goTo, labelOf, type PlacedFault } from './fault-marks.ts'
import { findingsList } from './findings-list.ts'
import { keepingFocus } from './focus-kept.ts'
import { tilesOf } from './glance.ts'
import { button, make, part } from './make.ts'
import { sentence } from './sentence.ts'

const VERDICTS: Record<Answer['verdict'], string> = {
  ready: 'Ready to build',
  review: 'Read the warnings first',
  blocked: 'Do not build it like this',
}

export interface AnswerEvents {
  take: (fix: { do: string; patch: readonly Change[] }) => void
  show: (pointer: string) => void
  /** Takes a place out of the design that the service does not know. */
  leaveOut: (pointers: readonly string[]) => void
}

/** Shows an answer: verdict, sentence, figures at a glance, findings. */
export function showAnswer(answer: Answer, draft: Draft, events: AnswerEvents): void {
  setVerdict(answer.verdict, VERDICTS[answer.verdict])
  say(answer.answer)
  showFaultItems([])
  part('tiles', HTMLElement).replaceChildren(
    ...tilesOf(answer, draft).map(({ label, value, note, state }) =>
      make(
        'div',
        { class: `tile ${state}` },
        make('dt', {}, label),
        make('dd', {}, make('b', {}, value), ' ', make('span', {}, note)),
      ),
    ),
  )
  const list = (ofNotes: boolean) =>
    findingsList(
      answer.findings.filter(({ severity }) => (severity === 'note') === ofNotes),
      events.take,
      events.show,
    )
  const notes = list(true)
  keepingFocus(part('answered', HTMLElement), () => {
    part('findings', HTMLElement).replaceChildren(...list(false))
    part('notes', HTMLElement).replaceChildren(...notes)
  })
  part('notes-count', HTMLElement).textContent = String(notes.length)
  part('cautions', HTMLElement).replaceChildren(...answer.cautions.map((caution) => make('li', {}, caution)))
  part('answered', HTMLElement).classList.remove('stale')
  part('answered', HTMLElement).hidden = false
}

/** Shows what is still needed or not understood; an older answer stays, marked as old. */
export function showFaults(faults: readonly PlacedFault[], events: AnswerEvents): void {
  const wrong = faults.filter(({ needed }) => !needed)
  setVerdict('open', wrong.length > 0 ? 'Something is not understood' : 'Not enough yet')
  say(
    wrong.length > 0
      ? 'Mend what is named here; nothing you typed is lost.'
      : 'A few things are still needed for an answer.',
  )
  showFaultItems(faults.map((fault) => make('li', {}, saidOf(fault), ' ', wayTo(fault, events))))
  part('answered', HTMLElement).classList.add('stale')
}

function showFaultItems(items: readonly HTMLElement[]): void {
  const list = part('faults', HTMLElement)
  keepingFocus(list, () => list.replaceChildren(...items))
}

/** In the words of the page where something is only missing, in those of the service where it is wrong. */
function saidOf(fault: PlacedFault): string {
  const { field, needed, empty, at } = fault
  if (empty) return `${field === undefined ? at : labelOf(field)}: holds nothing in this design.`
  if (field === undefined) return at === '' ? sentence(fault) : `${at}: ${sentence(fault)}`
  return needed && field.dataset['at'] === at
    ? `Still needed: ${labelOf(field)}.`
    : `${labelOf(field)}: ${sentence(fault)}`
}

function wayTo(
  { field, at, needed, empty, message }: PlacedFault,
  { leaveOut }: AnswerEvents,
): HTMLElement | undefined {
  if (field !== undefined && !empty)
    return button('Go there', () => goTo(field), 'link', `Go there: ${message}`)
  return needed || at === ''
    ? undefined
    : button('Leave it out', () => leaveOut([at]), 'do', `Leave out ${at}`)
}

/** Shows that the service is away or busy; what was answered before stays, marked as old. */
export function showAway(message: string, seconds: number): void {
  setVerdict('away', message)
  say(`Asking again in ${Math.ceil(seconds)} s. What you type is kept here.`)
  showFaultItems([])
  part('answered', HTMLElement).classList.add('stale')
}

/** Shows that an answer is long on its way; the one before stays, marked as old. */
export function showLate(): void {
  setVerdict('open', 'Asking the service')
  say(part('answered', HTMLElement).hidden ? '' : 'The last answer stands here until the new one comes.')
  showFaultItems([])
  part('answered', HTMLElement).classList.add('stale')
}

/** Before the first word is typed. */
export function showNothing(): void {
  setVerdict('open', 'Not asked yet')
  say('')
  showFaultItems([])
  part('answered', HTMLElement).hidden = true
}

export function showWorking(working: boolean): void {
  part('verdict', HTMLElement).classList.toggle('working', working)
}

function setVerdict(kind: string, text: string): void {
  const verdict = part('verdict', HTMLElement)
  verdict.dataset['kind'] = kind
  sayIfNew(part('verdict-text', HTMLElement), text)
}

/** The sentence stands twice: in the status that is read out, and above the answer where the status is one line. */
function say(text: string): void {
  sayIfNew(part('sentence', HTMLElement), text)
  sayIfNew(part('said', HTMLElement), text)
}

/** A screen reader says again what is written again. */
function sayIfNew(element: HTMLElement, text: string): void {
  if (element.textContent !== text) element.textContent = text
}
