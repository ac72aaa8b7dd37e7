import { type Draft, type Json, valueAt, withValue } from './draft.ts'
import { type FormContext, moreOf, rows } from './form-parts.ts'
import { button, make } from './make.ts'
import { board, boardMore, screws, tools } from './shop-fields.ts'

const boardsOf = (draft: Draft): readonly Json[] => {
  const list = valueAt(draft, '/stock')
  return Array.isArray(list) ? list : []
}

export function boardsSection(context: FormContext): HTMLElement {
  const { draft, change } = context
  const boards = boardsOf(draft)
  return make(
    'section',
    { class: 'card', 'aria-labelledby': 'part-boards' },
    make('h2', { id: 'part-boards', tabindex: '-1' }, 'Boards and tools on hand'),
    boards.map((_, index) =>
      make(
        'fieldset',
        {},
        make('legend', {}, `Board ${index + 1}`),
        rows(context, board, `/stock/${index}`),
        moreOf(`more-board-${index}`, 'More about this board', rows(context, boardMore, `/stock/${index}`)),
        button(`Remove board ${index + 1}`, () =>
          change((now) => withValue(now, `/stock/${index}`, undefined)),
        ),
      ),
    ),
    make(
      'p',
      {},
      button('Add a board', () => change(withAnotherBoard)),
    ),
    rows(context, tools),
    moreOf('more-shop', 'Screws and edging', rows(context, screws)),
  )
}

/** A usual offcut in the thickness of the box, to be changed. */
function withAnotherBoard(draft: Draft): Draft {
  const thicknessMm = valueAt(draft, '/box/panelThicknessMm')
  const offcut = { lengthMm: 1200, widthMm: 400, ...(thicknessMm === undefined ? {} : { thicknessMm }) }
  return withValue(draft, '/stock/-', offcut)
}
