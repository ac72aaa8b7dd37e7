import { shelfPair } from '../../api/design-check/example.ts'
import { type AnswerEvents, showNothing } from './answer-panel.ts'
import { asker } from './asking.ts'
import { changed, type Draft, draftFrom, type Json, withValue } from './draft.ts'
import { namedAt, namesOf, renamed } from './driver-name.ts'
import { forgetRemoved } from './drivers-section.ts'
import { fieldAt, goTo } from './fault-marks.ts'
import { headingOf, keepingFocus } from './focus-kept.ts'
import { formOf, shapeOf } from './form.ts'
import {
  beforeTyping,
  type History,
  newHistory,
  pastOf,
  redone,
  type Step,
  settled,
  stepped,
  undone,
} from './history.ts'
import { watchIdle } from './idle.ts'
import { idleMinutes } from './idle-minutes.ts'
import {
  forget,
  hasReadings,
  type Kept,
  keep,
  keepFound,
  keepReadings,
  kept,
  keptBefore,
  keptFound,
  keptReadings,
  newWork,
  onOtherTab,
  setAside,
} from './keep.ts'
import { nameOf } from './kinds.ts'
import { longerSearch } from './longer-search.ts'
import { button, part } from './make.ts'
import { measureDriver } from './measure.ts'
import { isOwnGuess, readingsFor, withFound } from './measured-data.ts'
import { nameParts } from './name-parts.ts'
import { tell, tellNothing } from './notice.ts'
import { emptyPictures, pictureFrames } from './pictures.ts'
import { copyLink, forgetOpened, openFile, openLink, stopSheet, withSheet } from './share.ts'
import { forgetSheet, printSheet, saveDesign, saveSheet } from './sheet.ts'
import { FRESH } from './starts.ts'
import { wayBetween } from './way-between.ts'
import { forgetWirings, markOldWirings } from './wiring-list.ts'
import { showNoWirings } from './wiring-offers.ts'

const EXAMPLE = draftFrom(JSON.stringify(shelfPair)) ?? FRESH

const form = part('form', HTMLFormElement)
const pictures = pictureFrames(() => ask())
const longer = longerSearch(() => draftNow())
let history: History = newHistory({ design: FRESH, work: newWork() })
let shape = ''
let isKeeping = true

const draftNow = (): Draft => history.design
/** While a design is on the page, and not the start. */
const isStarted = (): boolean => document.body.dataset['view'] === 'design'

/** What an answer offers is for the design that it answers, and for no other that has come in its place meanwhile. */
const onlyFor = (answered: Draft) => (step: (draft: Draft) => Draft) => {
  if (isStarted() && isSame(answered, draftNow())) change(step)
  else if (isStarted()) tell('That was for the design as it stood before. See what is said of it now.')
}

const eventsFor = (draft: Draft): AnswerEvents => ({
  take: ({ patch }) => onlyFor(draft)((now) => changed(now, patch)),
  show: (pointer) => {
    const field = fieldAt(form, pointer)
    if (field !== undefined) goTo(field)
  },
  leaveOut: (pointers) =>
    onlyFor(draft)((now) => pointers.reduce((left, pointer) => withValue(left, pointer, undefined), now)),
})

const editing = {
  get draft() {
    return draftNow()
  },
  set: (pointer: string, value: Json | undefined) => {
    history = stepped(history, typed(pointer, value), pointer)
    const driver = namedAt(pointer)
    if (driver !== undefined) nameParts(form, driver, nameOf(draftNow(), driver))
    if (shapeOf(draftNow(), pastOf(history)) !== shape) drawForm()
    stepTaken()
  },
  get past() {
    return pastOf(history)
  },
  change: (step: (draft: Draft) => Draft) => change(step),
  measure: (driver: number) => {
    const { work } = history
    const id = nameOf(draftNow(), driver)
    const found = ofDriver(driver, keptFound)
    const start = { id, readings: ofDriver(driver, keptReadings), found }
    measureDriver(readingsFor(draftNow(), driver, start), {
      typed: (readings) => keepReadings(work, id, readings),
      use: (data) => {
        // Upon a guess of which nobody knows the figures none are known.
        if (isOwnGuess(draftNow(), driver, found)) keepFound(work, id, data.parameters)
        change((draft) => withFound(draft, driver, data, found))
      },
    })
  },
}

/** A driver's name is in the wiring too. */
function typed(pointer: string, value: Json | undefined): Draft {
  const driver = namedAt(pointer)
  return driver === undefined
    ? withValue(draftNow(), pointer, value)
    : renamed(draftNow(), beforeTyping(history, pointer), driver, value)
}

/** What is kept of a driver under its name, else under one that it had before. */
function ofDriver(
  driver: number,
  keptOf: (work: string, id: string) => Draft | undefined,
): Draft | undefined {
  return namesOf(draftNow(), driver, pastOf(history))
    .map((name) => keptOf(history.work, name))
    .find((found) => found !== undefined)
}

function change(step: (draft: Draft) => Draft): void {
  history = stepped(history, step(draftNow()))
  drawForm()
  stepTaken()
}

function stepTaken(): void {
  forgetOpened()
  const wasKeeping = isKeeping
  isKeeping = keep(history)
  if (wasKeeping && !isKeeping)
    tell('This browser keeps nothing: before you close the page, save the design as a file.')
  part('undo', HTMLButtonElement).disabled = history.past.length === 0
  part('redo', HTMLButtonElement).disabled = history.next.length === 0
  longer.designChanged()
  markOldWirings(draftNow())
  ask()
}

/** Builds the form anew and puts the cursor back where it was. */
function drawForm(): void {
  shape = shapeOf(draftNow(), pastOf(history))
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

const { ask, stop: stopAsking } = asker({
  form,
  places: [pictures.first, pictures.more],
  draft: () => (isStarted() ? draftNow() : undefined),
  events: eventsFor,
  wirer: (draft) => ({ draft, past: pastOf(history), take: onlyFor(draft) }),
})

/** Puts a design on the page; true when another stood there before, which is then one step of Undo away. */
function open(design: Draft, work = newWork()): boolean {
  tellNothing()
  const before = isStarted() ? history : kept()
  const replaces = before !== undefined && !isSame(before.design, design)
  if (replaces && !isUntouched(before)) setAside(before)
  if (before === undefined) show(newHistory({ design, work }))
  else {
    const going = isStarted() ? history : newHistory(before, before.past)
    show(replaces ? stepped(going, design, '', work) : going)
  }
  return replaces
}

/** Goes on with what was kept, as far as Undo reaches. */
const goOn = (before: Kept): void => show(newHistory(before, before.past))

function show(next: History): void {
  history = next
  document.body.dataset['view'] = 'design'
  forgetAnother()
  showNothing()
  drawForm()
  showNoWirings()
  stepTaken()
  part('title', HTMLElement).focus()
  for (const place of [document.documentElement, form, part('nav', HTMLElement)]) place.scrollTo(0, 0)
}

const isUntouched = ({ design, work }: Step): boolean =>
  !hasReadings(work) && [FRESH, EXAMPLE].some((start) => isSame(start, design))

const isSame = (one: Draft, other: Draft): boolean => JSON.stringify(one) === JSON.stringify(other)

function toStart(): void {
  stopAsking()
  delete document.body.dataset['view']
  form.replaceChildren()
  forgetAnother()
  showNothing()
  tellNothing()
  drawStart()
  part('start-title', HTMLElement).focus()
}

/** Nothing of one design may stand beside another. */
function forgetAnother(): void {
  for (const dialog of document.querySelectorAll('dialog')) dialog.close()
  longer.forget()
  forgetRemoved()
  forgetWirings()
  stopSheet()
  forgetSheet()
  emptyPictures([pictures.first, pictures.more])
}

/** Clears the page for somebody else; the design can be brought back. */
function clear(): void {
  // What nobody has changed does not push out what somebody has made.
  if (!isUntouched(history) || keptBefore().length === 0) setAside(history)
  forget()
  toStart()
}

function drawStart(): void {
  const [last, ...earlier] = keptBefore()
  part('starts', HTMLElement).replaceChildren(
    button('Begin with my parts', () => open(FRESH), 'primary large'),
    button('Show me an example', () => open(EXAMPLE), 'large'),
    button('Open a saved design', () => part('file', HTMLInputElement).click(), 'large'),
    ...(last === undefined ? [] : [button('Bring back the last design', () => goOn(last), 'large')]),
    ...earlier.map((one, i) => button(`Bring back the design ${i + 2} ago`, () => goOn(one), 'large')),
  )
}

function wire(): void {
  const on = (id: string, press: () => void) => part(id, HTMLButtonElement).addEventListener('click', press)
  const go = (id: string, way: (from: History) => History, back: string) =>
    on(id, () => {
      history = way(history)
      drawForm()
      stepTaken()
      // The last step turns off the button that was pressed.
      if (part(id, HTMLButtonElement).disabled) part(back, HTMLButtonElement).focus()
    })
  go('undo', undone, 'redo')
  go('redo', redone, 'undo')
  form.addEventListener('focusout', () => {
    history = settled(history)
  })
  on('print', () => void withSheet(draftNow, printSheet))
  on('pdf', () => void withSheet(draftNow, saveSheet))
  on('save', () => saveDesign(draftNow()))
  on('link', () => void copyLink(draftNow()))
  on('clear', clear)
  wayBetween(part('to-answer', HTMLButtonElement), form, part('answer', HTMLElement))
  const file = part('file', HTMLInputElement)
  file.addEventListener('change', () => void openFile(file, open))
  form.addEventListener('submit', (event) => event.preventDefault())
  addEventListener('hashchange', () => void openLink(open))
  addEventListener('online', () => ask())
  onOtherTab(({ design, work }) => {
    if (isStarted() && !isSame(design, draftNow()))
      tell(
        work === history.work
          ? 'This design was changed in another tab.'
          : 'Another tab has another design. A new tab begins with what was changed last.',
        button('Take that over', () => open(design, work)),
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
  if (before !== undefined) goOn(before)
}

void begin()
