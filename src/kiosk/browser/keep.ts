import { type Draft, draftFrom, valueAt, withValue } from './draft.ts'

const NOW = 'boxwright-design'
const BEFORE = 'boxwright-design-before'
const READINGS = 'boxwright-readings'

/** Takes the place of a full or forbidden store, as long as the page is open. */
const inMemory = new Map<string, string>()

/** Keeps the work in progress where a reload or a power cut does not reach it; false where the browser forbids that. */
export const keep = (draft: Draft): boolean => put(NOW, JSON.stringify(draft))

export const kept = (): Draft | undefined => draftFrom(stored(NOW) ?? '')

/** What was on the page before it was cleared for somebody else. */
export const keptBefore = (): Draft | undefined => draftFrom(stored(BEFORE) ?? '')

/** Clears the page's memory; a design given here can still be brought back once. */
export function setAside(draft: Draft | undefined): void {
  if (draft !== undefined) put(BEFORE, JSON.stringify(draft))
  takeOut(NOW)
  forgetReadings()
}

/** What was typed about a driver that is being measured, by its id: a sweep by hand is half an hour of work. */
export const keepReadings = (id: string, draft: Draft): boolean =>
  put(READINGS, JSON.stringify(withValue(allReadings(), placeOf(id), draft)))

export function keptReadings(id: string): Draft | undefined {
  const draft = valueAt(allReadings(), placeOf(id))
  return draft === undefined ? undefined : draftFrom(JSON.stringify(draft))
}

export const forgetReadings = (): void => takeOut(READINGS)

const allReadings = (): Draft => draftFrom(stored(READINGS) ?? '') ?? {}

const placeOf = (id: string): string => `/of ${id.replaceAll('~', '~0').replaceAll('/', '~1')}`

/** Tells of a design that another tab has kept meanwhile. */
export function onOtherTab(tell: (draft: Draft) => void): void {
  addEventListener('storage', ({ key, newValue }) => {
    const draft = key === NOW && newValue !== null ? draftFrom(newValue) : undefined
    if (draft !== undefined) tell(draft)
  })
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
