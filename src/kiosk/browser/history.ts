import type { Draft } from './draft.ts'

/** One state of the page: the design, and the piece of work it belongs to, which begins when a design is opened. */
export interface Step {
  design: Draft
  work: string
}

/** What undo goes back to and redo forward to; typing on in one field is one step. */
export interface History extends Step {
  past: readonly Step[]
  next: readonly Step[]
  /** The field that is being typed in; empty when the last step was not typing, or the field was left. */
  field: string
}

const MOST = 100

export const newHistory = ({ design, work }: Step, past: readonly Step[] = []): History => ({
  design,
  work,
  past,
  next: [],
  field: '',
})

/** The next step; typing on in one field replaces the step, everything else adds one. */
export function stepped(history: History, design: Draft, field = '', work = history.work): History {
  const sameField = field !== '' && field === history.field
  const past = sameField ? history.past : [...history.past, stepOf(history)].slice(-MOST)
  return { design, work, past, next: [], field }
}

/** A field that was left is done: what is typed in it later is a step of its own. */
export const settled = (history: History): History => ({ ...history, field: '' })

export function undone(history: History): History {
  const before = history.past.at(-1)
  if (before === undefined) return settled(history)
  return { ...before, past: history.past.slice(0, -1), next: [stepOf(history), ...history.next], field: '' }
}

export function redone(history: History): History {
  const [after, ...next] = history.next
  if (after === undefined) return settled(history)
  return { ...after, past: [...history.past, stepOf(history)], next, field: '' }
}

/** What this design was before, the last one last; not what else was open. */
export const pastOf = ({ past, work }: History): Draft[] =>
  past.filter((step) => step.work === work).map(({ design }) => design)

/** The design as it was before the field that is being typed in was begun. */
export const beforeTyping = ({ past, design, field }: History, typedAt: string): Draft =>
  field === typedAt ? (past.at(-1)?.design ?? design) : design

const stepOf = ({ design, work }: Step): Step => ({ design, work })
