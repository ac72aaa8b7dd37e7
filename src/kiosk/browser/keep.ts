import { type Draft, draftFrom } from './draft.ts'

const NOW = 'boxwright-design'
const BEFORE = 'boxwright-design-before'

/** Keeps the work in progress where a reload or a power cut does not reach it. A full or forbidden store is no fault. */
export const keep = (draft: Draft): void => put(NOW, JSON.stringify(draft))

export const kept = (): Draft | undefined => draftFrom(stored(NOW) ?? '')

/** What was on the page before it was cleared for somebody else. */
export const keptBefore = (): Draft | undefined => draftFrom(stored(BEFORE) ?? '')

/** Clears the page's memory; the design can still be brought back once. */
export function setAside(draft: Draft): void {
  put(BEFORE, JSON.stringify(draft))
  try {
    localStorage.removeItem(NOW)
  } catch {
    // Nothing was kept then.
  }
}

/** Tells of a design that another tab has kept meanwhile. */
export function onOtherTab(tell: (draft: Draft) => void): void {
  addEventListener('storage', ({ key, newValue }) => {
    const draft = key === NOW && newValue !== null ? draftFrom(newValue) : undefined
    if (draft !== undefined) tell(draft)
  })
}

function stored(name: string): string | null {
  try {
    return localStorage.getItem(name)
  } catch {
    return null
  }
}

function put(name: string, text: string): void {
  try {
    localStorage.setItem(name, text)
  } catch {
    // The page works on without a memory.
  }
}
