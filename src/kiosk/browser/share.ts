import { type Draft, draftFrom } from './draft.ts'
import { kept, setAside } from './keep.ts'
import { draftInHash, linkTo } from './link.ts'
import { make } from './make.ts'
import { tell, tellNothing } from './notice.ts'

type Open = (draft: Draft) => void

export async function openFile(input: HTMLInputElement, open: Open): Promise<void> {
  const file = input.files?.[0]
  input.value = ''
  if (file === undefined) return
  const draft = draftFrom(await file.text())
  if (draft === undefined) tell(`${file.name} holds no design. It has to be a file saved by this page.`)
  else open(draft)
}

/** Opens the design in the address; what was on the page before can be brought back. */
export async function openLink(open: Open): Promise<boolean> {
  const draft = await draftInHash(location.hash)
  if (draft === undefined) return false
  history.replaceState(null, '', location.pathname + location.search)
  if (draft === 'broken') {
    tell('The design in this link cannot be read: part of the link may be missing. Nothing was changed.')
    return false
  }
  const before = kept()
  if (before !== undefined) setAside(before)
  open(draft)
  return true
}

export async function copyLink(draft: Draft): Promise<void> {
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

/** What a button does with the service, told when it cannot. */
export async function withSheet(
  draft: Draft,
  work: (draft: Draft, signal: AbortSignal) => Promise<boolean>,
): Promise<void> {
  tell('Making the build sheet…')
  const done = await work(draft, new AbortController().signal)
  if (done) tellNothing()
  else tell('There is no build sheet yet: the design has to be answered first.')
}
