import { shelfPair } from '../../api/design-check/example.ts'
import {
  type AnswerEvents,
  showAnswer,
  showAway,
  showFaults,
  showNothing,
  showWorking,
} from './answer-panel.ts'
import { type Answer, designCheck, isAbort } from './ask.ts'
import { changed, type Draft, draftFrom, type Json, valueAt, withValue } from './draft.ts'
import { fieldAt, goTo, markFaults } from './fault-marks.ts'
import { formOf, shapeOf } from './form.ts'
import { type History, newHistory, stepped, undone } from './history.ts'
import { idleMinutes, watchIdle } from './idle.ts'
import { keep, kept, keptBefore, onOtherTab, setAside } from './keep.ts'
import { draftInHash, linkTo } from './link.ts'
import { longerSearch } from './longer-search.ts'
import { button, make, part } from './make.ts'
import { measureDriver } from './measure.ts'
import { boxOffers, wiringOffers } from './offers.ts'
import { drawPictures, pictureFrames } from './pictures.ts'
import { printSheet, saveDesign, saveSheet } from './sheet.ts'
import { FRESH } from './starts.ts'

const SOON_MS = 200

const form = part('form', HTMLFormElement)
const notice = part('notice', HTMLElement)
const pictures = pictureFrames(() => void ask())
let history: History = newHistory(FRESH)
let shape = ''
let asking = new AbortController()
let again = 0

const draftNow = (): Draft => history.now
/** While a design is on the page, and not the start. */
const isStarted = (): boolean => document.body.dataset['view'] === 'design'

const events: AnswerEvents = {
  take: ({ patch }) => change((draft) => changed(draft, patch)),
  show: (pointer) => {
    const field = fieldAt(form, pointer)
    if (field !== undefined) goTo(field)
  },
  leaveOut: (pointers) =>
    change((draft) => pointers.reduce((left, pointer) => withValue(left, pointer, undefined), draft)),
}

const editing = {
  get draft() {
    return draftNow()
  },
  set: (pointer: string, value: Json | undefined) => {
    history = stepped(history, withValue(draftNow(), pointer, value), pointer)
    if (shapeOf(draftNow()) !== shape) drawForm()
    stepTaken()
  },
  change: (step: (draft: Draft) => Draft) => change(step),
  measure: (driver: number) =>
    measureDriver(
      String(valueAt(draftNow(), `/drivers/${driver}/id`) ?? 'driver'),
      ({ parameters, guessed }) =>
        change((draft) => {
          const known = withValue(draft, `/drivers/${driver}/parameters`, parameters)
          return withValue(known, `/drivers/${driver}/guessed`, guessed ? true : undefined)
        }),
    ),
}

function change(step: (draft: Draft) => Draft): void {
  history = stepped(history, step(draftNow()))
  drawForm()
  stepTaken()
}

function stepTaken(): void {
  keep(draftNow())
  part('undo', HTMLButtonElement).disabled = history.past.length === 0
  void ask()
}

/** Builds the form anew and puts the cursor back where it was. */
function drawForm(): void {
  shape = shapeOf(draftNow())
  const at = document.activeElement?.id ?? ''
  const open = [...form.querySelectorAll('details[open]')].map(({ id }) => id)
  form.replaceChildren(...formOf(editing))
  for (const id of open) {
    const details = document.getElementById(id)
    if (details instanceof HTMLDetailsElement) details.open = true
  }
  if (at !== '') document.getElementById(at)?.focus({ preventScroll: true })
}

/** Asks for the answer to what stands in the form; only the last question counts. */
async function ask(): Promise<void> {
  if (!isStarted()) return
  asking.abort()
  clearTimeout(again)
  asking = new AbortController()
  const { signal } = asking
  const draft = draftNow()
  const slow = setTimeout(() => showWorking(true), SOON_MS)
  try {
    const reply = await designCheck(draft, signal)
    if ('away' in reply) {
      showAway(reply.away, reply.retryAfterS)
      again = setTimeout(() => void ask(), reply.retryAfterS * 1000)
      return
    }
    const faults = markFaults(form, 'faults' in reply ? reply.faults : [], draft)
    if ('faults' in reply) return showFaults(faults, events)
    await answered(reply.answer, draft, signal)
  } catch (error) {
    if (!isAbort(error)) throw error
  } finally {
    clearTimeout(slow)
    if (!signal.aborted) showWorking(false)
  }
}

async function answered(answer: Answer, draft: Draft, signal: AbortSignal): Promise<void> {
  showAnswer(answer, draft, events)
  part('wirings', HTMLElement).replaceChildren(...wiringOffers(answer, draft, change))
  part('suited', HTMLElement).replaceChildren(...boxOffers(answer, change))
  await drawPictures([pictures.first, pictures.more], draft, signal)
  if (!signal.aborted)
    document.body.dataset['drawn'] = String(Number(document.body.dataset['drawn'] ?? 0) + 1)
}

function open(draft: Draft): void {
  history = newHistory(draft)
  document.body.dataset['view'] = 'design'
  showNothing()
  drawForm()
  stepTaken()
  part('title', HTMLElement).focus()
}

function toStart(): void {
  asking.abort()
  clearTimeout(again)
  delete document.body.dataset['view']
  form.replaceChildren()
  showNothing()
  drawStart()
}

/** Clears the page for somebody else; the design can be brought back. */
function clear(): void {
  setAside(draftNow())
  for (const dialog of document.querySelectorAll('dialog')) dialog.close()
  toStart()
}

function drawStart(): void {
  const before = keptBefore()
  part('starts', HTMLElement).replaceChildren(
    button('Begin with my parts', () => open(FRESH), 'primary large'),
    button('Show me an example', () => open(draftFrom(JSON.stringify(shelfPair)) ?? FRESH), 'large'),
    button('Open a saved design', () => part('file', HTMLInputElement).click(), 'large'),
    ...(before === undefined ? [] : [button('Bring back the last design', () => open(before), 'large')]),
  )
}

function tell(message: string, ...more: Node[]): void {
  notice.replaceChildren(
    make('span', {}, message),
    ...more,
    button('Close', () => (notice.hidden = true)),
  )
  notice.hidden = false
}

async function openFile(input: HTMLInputElement): Promise<void> {
  const file = input.files?.[0]
  input.value = ''
  if (file === undefined) return
  const draft = draftFrom(await file.text())
  if (draft === undefined) tell(`${file.name} holds no design. It has to be a file saved by this page.`)
  else open(draft)
}

async function openLink(): Promise<boolean> {
  const draft = await draftInHash(location.hash)
  if (draft === undefined) return false
  globalThis.history.replaceState(null, '', location.pathname + location.search)
  if (draft === 'broken') {
    tell('The design in this link cannot be read: part of the link may be missing. Nothing was changed.')
    return false
  }
  const before = kept()
  if (before !== undefined) setAside(before)
  open(draft)
  return true
}

async function copyLink(): Promise<void> {
  const link = await linkTo(draftNow(), location.origin + location.pathname)
  const field = make('input', {
    type: 'text',
    value: link,
    readonly: true,
    'aria-label': 'Link to this design',
  })
  const copied = await navigator.clipboard?.writeText(link).then(
    () => true,
    () => false,
  )
  tell(
    copied ? 'The link is copied; the whole design is in it.' : 'Copy this link; the whole design is in it.',
    field,
  )
  if (!copied) field.select()
}

/** What a button does with the service, told when it cannot. */
async function withSheet(work: (draft: Draft, signal: AbortSignal) => Promise<boolean>): Promise<void> {
  tell('Making the build sheet…')
  const done = await work(draftNow(), new AbortController().signal)
  if (done) notice.hidden = true
  else tell('There is no build sheet yet: the design has to be answered first.')
}

function wire(): void {
  const on = (id: string, press: () => void) => part(id, HTMLButtonElement).addEventListener('click', press)
  on('undo', () => {
    history = undone(history)
    drawForm()
    stepTaken()
  })
  on('print', () => void withSheet(printSheet))
  on('pdf', () => void withSheet(saveSheet))
  on('save', () => saveDesign(draftNow()))
  on('link', () => void copyLink())
  on('clear', clear)
  on('to-answer', () => part('answer', HTMLElement).scrollIntoView())
  const file = part('file', HTMLInputElement)
  file.addEventListener('change', () => void openFile(file))
  form.addEventListener('submit', (event) => event.preventDefault())
  addEventListener('hashchange', () => void openLink())
  addEventListener('online', () => void ask())
  onOtherTab((draft) => {
    if (isStarted() && JSON.stringify(draft) !== JSON.stringify(draftNow()))
      tell(
        'This design was changed in another tab.',
        button('Take that over', () => open(draft)),
      )
  })
}

async function begin(): Promise<void> {
  part('pictures', HTMLElement).append(pictures.first, longerSearch(draftNow), pictures.more)
  wire()
  drawStart()
  showNothing()
  watchIdle(idleMinutes(location.search), () => !isStarted(), clear)
  if (await openLink()) return
  const before = kept()
  if (before !== undefined) open(before)
}

void begin()
