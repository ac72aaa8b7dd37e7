import { nearestName } from '../core/nearest-name.ts'
import type { Fault } from '../core/outcome.ts'
import type { CutListSections } from '../schema/cut-list.ts'
import type { Form } from './forms.ts'
import { invalidInput } from './problem.ts'

/** What the query says to draw. */
export interface Choice {
  picture?: string
  /** Which board, from 1. */
  sheet?: number
  /** Name of a panel. */
  panel?: string
}

/** Options that draw one thing alone, with the picture and the forms they belong to. */
const ALONE = {
  sheet: { picture: 'cutting', forms: ['svg'] },
  panel: { picture: 'panels', forms: ['svg', 'dxf'] },
} as const satisfies Record<string, { picture: string; forms: readonly Form[] }>

type Alone = keyof typeof ALONE
const NAMES: readonly Alone[] = ['sheet', 'panel']

/** false for an option that chooses from a picture which a calculation does not have. */
export const isOffered = (option: string, pictures: readonly string[]): boolean =>
  NAMES.every((name) => name !== option || pictures.includes(ALONE[name].picture))

/**
 * The picture to draw: as named, else that of the thing chosen alone, else the first. Refuses what is chosen for
 * another picture or form, rather than leave it out in silence.
 */
export function pictureFor(choice: Choice, form: Form, pictures: readonly string[]): string {
  const chosen = NAMES.filter((name) => choice[name] !== undefined)
  const first = chosen[0] === undefined ? pictures[0] : ALONE[chosen[0]].picture
  const picture = choice.picture ?? first ?? ''
  const faults = chosen.flatMap((name): Fault[] => {
    const { picture: own, forms } = ALONE[name]
    const known: readonly Form[] = forms
    if (form === 'svg' ? own === picture : known.includes(form)) return []
    const dxf = known.includes('dxf') ? ', or with dxf' : ''
    return [{ at: `/${name}`, message: `goes with picture=${own} of svg${dxf}` }]
  })
  if (faults.length > 0 && (form === 'svg' || form === 'dxf')) throw invalidInput(faults)
  return picture
}

/** Which of the boards to draw, from 0; undefined for all. Refuses a board that is not cut. */
export function chosenSheet({ sheets }: Pick<CutListSections, 'sheets'>, { sheet }: Choice) {
  if (sheet === undefined) return undefined
  if (sheet > sheets.length) {
    const cut = sheets.length === 1 ? 'one board is cut' : `${sheets.length} boards are cut`
    throw invalidInput([{ at: '/sheet', message: `is ${sheet}, but ${cut}` }])
  }
  return sheet - 1
}

/** The panel to draw, by its name; undefined for all. Refuses a name that no panel has. */
export function chosenPanel({ panels }: Pick<CutListSections, 'panels'>, { panel }: Choice) {
  const names = panels.map(({ id }) => id)
  if (panel === undefined || names.includes(panel)) return panel
  const near = nearestName(panel, names)
  const meant = near === undefined ? '' : `; did you mean "${near}"?`
  const message = `must be one of ${names.join(', ') || 'none'}, is ${JSON.stringify(panel)}${meant}`
  throw invalidInput([{ at: '/panel', message }])
}
