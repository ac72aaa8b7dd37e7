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
import { headingOf, keepingFocus } from './focus-kept.ts'
import { formOf, shapeOf } from './form.ts'
import { type History, newHistory, stepped, undone } from './history.ts'
import { watchIdle } from './idle.ts'
import { idleMinutes } from './idle-minutes.ts'
import {
  forgetReadings,
  keep,
  keepReadings,
  kept,
  keptBefore,
  keptReadings,
  onOtherTab,
  setAside,
} from './keep.ts'
import { longerSearch } from './longer-search.ts'
import { button, part } from './make.ts'
import { measureDriver } from './measure.ts'
import { tell } from './notice.ts'
import { showOffers } from './offers.ts'
import { askPictures, type Coming, drawPictures, pictureFrames } from './pictures.ts'
import { copyLink, openFile, openLink, withSheet } from './share.ts'
import { printSheet, saveDesign, saveSheet } from './sheet.ts'
import { FRESH } from './starts.ts'
import { wayBetween } from './way-between.ts'
import type { Wirer } from './wiring-list.ts'
import { showFirstWirings, showNoWirings, wiringFaultsPlaced } from './wiring-offers.ts'

const SOON_MS = 200
const A_MOMENT_MS = 2000
const EXAMPLE = draftFrom(JSON.stringify(shelfPair)) ?? FRESH

const form = part('form', HTMLFormElement)
const pictures = pictureFrames(() => void ask())
const longer = longerSearch(() => draftNow())
let history: History = newHistory(FRESH)
let shape = ''
let asking = new AbortController()
let again = 0
let isKeeping = true

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
  get past() {
    return history.past
  },
  change: (step: (draft: Draft) => Draft) => change(step),
  measure: (driver: number) => {
    const id = String(valueAt(draftNow(), `/drivers/${driver}/id`) ?? 'driver')
    measureDriver(keptReadings(id) ?? { drivers: [{ id }] }, {
      typed: (readings) => keepReadings(id, readings),
      use: ({ parameters, guessed }) =>
        change((draft) => {
          const known = withValue(draft, `/drivers/${driver}/parameters`, parameters)
          return withValue(known, `/drivers/${driver}/guessed`, guessed ? true : undefined)
        }),
    })
  },
}

function change(step: (draft: Draft) => Draft): void {
  history = stepped(history, step(draftNow()))
  drawForm()
  stepTaken()
}

function stepTaken(): void {
  const wasKeeping = isKeeping
  isKeeping = keep(draftNow())
  if (wasKeeping && !isKeeping)
    tell('This browser keeps nothing: before you close the page, save the design as a file.')
  part('undo', HTMLButtonElement).disabled = history.past.length === 0
  longer.designChanged()
  void ask()
}

/** Builds the form anew and puts the cursor back where it was. */
function drawForm(): void {
  shape = shapeOf(draftNow())
  const open = [...form.querySelectorAll('details[open]')].map(({ id }) => id)
  const build = () => {
    form.replaceChildren(...formOf(editing))
    for (const id of open) {
      const details = document.getElementById(id)
      if (details instanceof HTMLDetailsElement) details.open = true
    }
  }
  keepingFocus(form, build, headingOf)
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
    // Asked in this order: the service has the answer when the pictures of it are wanted.
    const asked = designCheck(draft, signal)
    const coming = askPictures([pictures.first, pictures.more], draft, signal)
    const reply = await asked
    if ('away' in reply) {
      showAway(reply.away, reply.retryAfterS)
      again = setTimeout(() => void ask(), reply.retryAfterS * 1000)
      return
    }
    if ('faults' in reply) {
      showFirstWirings(reply.faults, wirerOf(draft))
      const placed = wiringFaultsPlaced(reply.faults, draft)
      return showFaults(markFaults(form, placed.faults, placed.draft), events)
    }
    markFaults(form, [], draft)
    await answered(reply.answer, draft, coming, signal)
  } catch (error) {
    if (!isAbort(error)) throw error
  } finally {
    clearTimeout(slow)
    if (!signal.aborted) showWorking(false)
  }
}

const wirerOf = (draft: Draft): Wirer => ({ draft, past: history.past, take: change })

async function answered(answer: Answer, draft: Draft, coming: readonly Coming[], signal: AbortSignal) {
  showAnswer(answer, draft, events)
  showOffers(form, answer, wirerOf(draft))
  const complete = await drawPictures(coming, signal)
  if (!complete && !signal.aborted) again = setTimeout(() => void ask(), A_MOMENT_MS)
  else if (!signal.aborted)
    document.body.dataset['drawn'] = String(Number(document.body.dataset['drawn'] ?? 0) + 1)
}

/** Puts a design on the page; what stood there before is one step of Undo away. */
function open(draft: Draft): void {
  const before = isStarted() ? draftNow() : kept()
  if (before === undefined || isSame(before, draft)) history = newHistory(draft)
  else {
    history = stepped(isStarted() ? history : newHistory(before), draft)
    forgetReadings()
  }
  document.body.dataset['view'] = 'design'
  longer.forget()
  showNothing()
  drawForm()
  showNoWirings()
  stepTaken()
  part('title', HTMLElement).focus()
  for (const place of [document.documentElement, form, part('nav', HTMLElement)]) place.scrollTo(0, 0)
}

const isSame = (one: Draft, other: Draft): boolean => JSON.stringify(one) === JSON.stringify(other)

function toStart(): void {
  asking.abort()
  clearTimeout(again)
  delete document.body.dataset['view']
  form.replaceChildren()
  longer.forget()
  showNothing()
  drawStart()
}

/** Clears the page for somebody else; the design can be brought back. */
function clear(): void {
  const untouched = [FRESH, EXAMPLE].some((start) => isSame(start, draftNow()))
  // What nobody has changed does not push out what somebody has made.
  setAside(untouched && keptBefore() !== undefined ? undefined : draftNow())
  for (const dialog of document.querySelectorAll('dialog')) dialog.close()
  toStart()
}

function drawStart(): void {
  const before = keptBefore()
  part('starts', HTMLElement).replaceChildren(
    button('Begin with my parts', () => open(FRESH), 'primary large'),
    button('Show me an example', () => open(EXAMPLE), 'large'),
    button('Open a saved design', () => part('file', HTMLInputElement).click(), 'large'),
    ...(before === undefined ? [] : [button('Bring back the last design', () => open(before), 'large')]),
  )
}

function wire(): void {
  const on = (id: string, press: () => void) => part(id, HTMLButtonElement).addEventListener('click', press)
  on('undo', () => {
    history = undone(history)
    drawForm()
    stepTaken()
  })
  on('print', () => void withSheet(draftNow(), printSheet))
  on('pdf', () => void withSheet(draftNow(), saveSheet))
  on('save', () => saveDesign(draftNow()))
  on('link', () => void copyLink(draftNow()))
  on('clear', clear)
  wayBetween(part('to-answer', HTMLButtonElement), form, part('answer', HTMLElement))
  const file = part('file', HTMLInputElement)
  file.addEventListener('change', () => void openFile(file, open))
  form.addEventListener('submit', (event) => event.preventDefault())
  addEventListener('hashchange', () => void openLink(open))
  addEventListener('online', () => void ask())
  onOtherTab((draft) => {
    if (isStarted() && !isSame(draft, draftNow()))
      tell(
        'This design was changed in another tab.',
        button('Take that over', () => open(draft)),
      )
  })
}

async function begin(): Promise<void> {
  part('pictures', HTMLElement).append(pictures.first, longer.place, pictures.more)
  wire()
  drawStart()
  showNothing()
  watchIdle(idleMinutes(location.search), () => !isStarted(), clear)
  if (await openLink(open)) return
  const before = kept()
  if (before !== undefined) open(before)
}

void begin()
