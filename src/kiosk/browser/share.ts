import { isAbort } from './ask.ts'
import type { Draft } from './draft.ts'
import { designFrom } from './file-design.ts'
import { canPack, draftInHash, linkTo } from './link.ts'
import { button, make } from './make.ts'
import { tell, tellNothing, tellWork } from './notice.ts'
import type { SheetOutcome } from './sheet.ts'

/** Tells whether another design was there before. */
type Open = (draft: Draft) => boolean

export async function openFile(input: HTMLInputElement, open: Open): Promise<void> {
  const file = input.files?.[0]
  input.value = ''
  if (file === undefined) return
  const text = await file.text().catch(() => undefined)
  if (text === undefined) {
    tell(`${file.name} cannot be read. Is it still there?`)
    return
  }
  const draft = designFrom(text)
  if (draft === undefined) tell(`${file.name} holds no design. It has to be a file saved by this page.`)
  else opened(draft, open)
}

/** What stood on the page before is one touch of Undo away. */
function opened(draft: Draft, open: Open): void {
  if (open(draft)) dropOpened = tell('Opened. Undo brings back the design that was here before.')
}

let dropOpened = (): void => undefined

/** One step on, Undo brings back something else. */
export const forgetOpened = (): void => dropOpened()

/** Opens the design in the address. */
export async function openLink(open: Open): Promise<boolean> {
  const draft = await draftInHash(location.hash)
  if (draft === undefined) return false
  history.replaceState(null, '', location.pathname + location.search)
  if (draft === 'broken') {
    tell(
      canPack()
        ? 'The design in this link cannot be read: part of the link may be missing. Nothing was changed.'
        : 'This browser is too old to open a design from a link. Ask for it as a file.',
    )
    return false
  }
  opened(draft, open)
  return true
}

export async function copyLink(draft: Draft): Promise<void> {
  if (!canPack()) {
    tell('This browser is too old to pack a design into a link. Save the design as a file instead.')
    return
  }
  const link = await linkTo(draft, location.origin + location.pathname)
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

const OUTCOMES: Record<Exclude<SheetOutcome, 'made'>, string> = {
  none: 'There is no build sheet yet: the design has to be answered first.',
  away: 'The service does not answer, so there is no build sheet now. Nothing is lost; try again in a moment.',
}
let making = new AbortController()
let dropLine = (): void => undefined

/** A sheet on its way is of a design that has gone. */
export function stopSheet(): void {
  making.abort()
  dropLine()
}

/** Has a build sheet made, which can be stopped; told when there is none. A new one takes the place of the one before. */
export async function withSheet(
  design: () => Draft,
  work: (draft: Draft, signal: AbortSignal) => Promise<SheetOutcome>,
): Promise<void> {
  const draft = design()
  stopSheet()
  tellNothing()
  making = new AbortController()
  const { signal } = making
  const done = tellWork(
    'Making the build sheet…',
    make('progress', { 'aria-label': 'Making the build sheet' }),
    button('Stop', stopSheet),
  )
  dropLine = done
  try {
    const outcome = await work(draft, signal)
    if (outcome !== 'made') tell(OUTCOMES[outcome])
    else if (JSON.stringify(design()) !== JSON.stringify(draft)) tell(EARLIER)
  } catch (error) {
    if (!isAbort(error)) throw error
  } finally {
    done()
  }
}

const EARLIER =
  'That build sheet is of the design as it was when you asked for it; what you changed since is not in it.'
