import type { Draft } from './draft.ts'

/** What undo goes back to; steps of one field in a row are one. */
export interface History {
  past: readonly Draft[]
  now: Draft
  /** The field of the last step; empty for a step that is not typing. */
  field: string
}

const MOST = 100

export const newHistory = (now: Draft): History => ({ past: [], now, field: '' })

/** The next step; typing on in one field replaces the step, everything else adds one. */
export function stepped(history: History, now: Draft, field = ''): History {
  const sameField = field !== '' && field === history.field
  const past = sameField ? history.past : [...history.past, history.now].slice(-MOST)
  return { past, now, field }
}

export function undone({ past, now }: History): History {
  const before = past.at(-1)
  return before === undefined ? { past, now, field: '' } : { past: past.slice(0, -1), now: before, field: '' }
}
