import { type Draft, draftFrom, type Json, valueAt, withValue } from './draft.ts'
import type { Step } from './history.ts'

const NOW = 'boxwright-design'
const WORK = 'boxwright-work'
const ASIDE = 'boxwright-set-aside'
const READINGS = 'boxwright-readings'

/** Designs that can be brought back, and pieces of work whose readings are kept. */
const MOST_ASIDE = 3
const MOST_READ = 8
/** Letters of the steps that are kept with a design: a browser keeps some millions. */
const MOST_LETTERS = 200_000

/** A design with what undo goes back to. */
export interface Kept extends Step {
  past: readonly Step[]
}

/** Takes the place of a full or forbidden store, as long as the page is open. */
const inMemory = new Map<string, string>()

/** A name that no other design, tab or visit has. */
const newName = (): string => `${Date.now().toString(36)}-${Math.random().toString(36).slice(2)}`

const TAB = newName()

export const newWork = newName

/**
 * Keeps the work in progress where a reload or a power cut does not reach it; false where the browser forbids that.
 * Each tab has its own, and the one that was changed last is what a new tab finds.
 */
export function keep({ design, work, past }: Kept): boolean {
  const about = JSON.stringify({ tab: TAB, work, past: fewEnough(past) })
  const text = JSON.stringify(design)
  putOfTab(WORK, about)
  putOfTab(NOW, text)
  put(WORK, about)
  return put(NOW, text)
}

let measured: { past: readonly Step[]; few: readonly Step[] } = { past: [], few: [] }

/** The last steps that are short enough together; counted anew only after a new step. */
function fewEnough(past: readonly Step[]): readonly Step[] {
  if (measured.past !== past) {
    let letters = 0
    const from = past.findLastIndex((step) => {
      letters += JSON.stringify(step).length
      return letters > MOST_LETTERS
    })
    measured = { past, few: past.slice(from + 1) }
  }
  return measured.few
}

/** What this tab had, else what was changed last in any; undefined after this tab was cleared. */
export function kept(): Kept | undefined {
  const own = storedOfTab(NOW)
  return own === null ? keptOfAny() : keptFrom(own, storedOfTab(WORK))
}

const keptOfAny = (): Kept | undefined => keptFrom(stored(NOW), stored(WORK))

function keptFrom(text: string | null, about: string | null): Kept | undefined {
  const design = draftFrom(text ?? '')
  const { work, past } = read(about) ?? {}
  return design === undefined
    ? undefined
    : { design, work: typeof work === 'string' ? work : newWork(), past: stepsFrom(past) }
}

const stepsFrom = (past: Json | undefined): Step[] =>
  (Array.isArray(past) ? past : []).flatMap((step: Json) => {
    const design = valueAt(step, '/design')
    const work = valueAt(step, '/work')
    return isDraft(design) && typeof work === 'string' ? [{ design, work }] : []
  })

const isDraft = (value: Json | undefined): value is Draft =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** The designs that were taken off the page, the last one first. */
export function keptBefore(): Kept[] {
  const aside = read(stored(ASIDE))?.['aside']
  return (Array.isArray(aside) ? aside : []).flatMap((one: Json): Kept[] =>
    stepsFrom([one]).map((step) => ({ ...step, past: stepsFrom(valueAt(one, '/past')) })),
  )
}

/** A design that can still be brought back, in the place of an older state of it. */
export function setAside({ design, work, past }: Kept): void {
  const others = keptBefore().filter((one) => one.work !== work)
  const aside = [{ design, work, past: fewEnough(past) }, ...others].slice(0, MOST_ASIDE)
  put(ASIDE, JSON.stringify({ aside }))
}

/** Clears the memory of this tab; what another one has kept since stays. */
export function forget(): void {
  putOfTab(NOW, '')
  if (read(stored(WORK))?.['tab'] !== TAB) return
  takeOut(NOW)
  takeOut(WORK)
}

/** What was typed about a driver that is being measured: a sweep by hand is half an hour of work. */
export const keepReadings = (work: string, id: string, draft: Draft): boolean =>
  putReadings(work, placeOf('of', id), draft)

export const keptReadings = (work: string, id: string): Draft | undefined =>
  readingsAt(work, placeOf('of', id))

/** Data that a guess or readings brought into the design, to be told from typed ones. */
export const keepFound = (work: string, id: string, parameters: Draft): boolean =>
  putReadings(work, placeOf('found', id), parameters)

export const keptFound = (work: string, id: string): Draft | undefined =>
  readingsAt(work, placeOf('found', id))

/** Whether anything was typed about the drivers of a piece of work. */
export const hasReadings = (work: string): boolean => read(stored(READINGS))?.[work] !== undefined

function readingsAt(work: string, place: string): Draft | undefined {
  const draft = valueAt(read(stored(READINGS)) ?? {}, `/${work}${place}`)
  return isDraft(draft) ? draft : undefined
}

function putReadings(work: string, place: string, draft: Draft): boolean {
  const { [work]: own = {}, ...others } = read(stored(READINGS)) ?? {}
  const latest = Object.entries(others).slice(1 - MOST_READ)
  const readings = { ...Object.fromEntries(latest), [work]: withValue(isDraft(own) ? own : {}, place, draft) }
  return put(READINGS, JSON.stringify(readings))
}

const placeOf = (what: string, id: string): string =>
  `/${what} ${id.replaceAll('~', '~0').replaceAll('/', '~1')}`

/** Tells of a design that another tab has kept meanwhile. */
export function onOtherTab(tell: (other: Kept) => void): void {
  addEventListener('storage', ({ key, newValue }) => {
    const other = key === NOW && newValue !== null ? keptOfAny() : undefined
    if (other !== undefined) tell(other)
  })
}

/** An object as this page has written it; it may be longer than a design. */
function read(text: string | null): { readonly [name: string]: Json } | undefined {
  try {
    const value: Json = JSON.parse(text ?? 'null')
    return isDraft(value) ? value : undefined
  } catch {
    return undefined
  }
}

function stored(name: string): string | null {
  const own = inMemory.get(name)
  if (own !== undefined) return own
  try {
    return localStorage.getItem(name)
  } catch {
    return null
  }
}

function put(name: string, text: string): boolean {
  try {
    localStorage.setItem(name, text)
    inMemory.delete(name)
    return true
  } catch {
    inMemory.set(name, text)
    return false
  }
}

function takeOut(name: string): void {
  inMemory.delete(name)
  try {
    localStorage.removeItem(name)
  } catch {
    // Nothing was kept then.
  }
}

function storedOfTab(name: string): string | null {
  try {
    return sessionStorage.getItem(name)
  } catch {
    return null
  }
}

function putOfTab(name: string, text: string): void {
  try {
    sessionStorage.setItem(name, text)
  } catch {
    // What all tabs share is then what a reload finds.
  }
}
