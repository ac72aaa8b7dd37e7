import { askFor } from './ask.ts'
import { type Draft, valueAt } from './draft.ts'
import { make } from './make.ts'

/** What became of a sheet: made, none for this design, or the service away. */
export type SheetOutcome = 'made' | 'none' | 'away'

const STYLE = /<style>([^<]*)<\/style>/g
const OWN_STYLE = / style="/g

/** A sheet that was printed is of a design, and goes with it. */
export const forgetSheet = (): void => document.getElementById('sheet')?.remove()

/**
 * Prints the build sheet from a frame of its own, so that the page itself stays as it is. The frame is under the
 * policy of the page, which forbids styles in the markup: they are taken out and handed to the frame by script.
 */
export async function printSheet(draft: Draft, signal: AbortSignal): Promise<SheetOutcome> {
  const sheet = await askFor('/v1/design-check?format=html', draft, signal)
  if (!(sheet instanceof Blob)) return sheet
  const html = await sheet.text()
  forgetSheet()
  const bare = html.replace(STYLE, '').replace(OWN_STYLE, ' data-style="')
  const address = URL.createObjectURL(new Blob([bare], { type: 'text/html;charset=utf-8' }))
  const frame = make('iframe', {
    id: 'sheet',
    title: 'Build sheet',
    tabindex: '-1',
    'aria-hidden': 'true',
    src: address,
  })
  const loaded = new Promise((done) => frame.addEventListener('load', done))
  document.body.append(frame)
  await loaded
  URL.revokeObjectURL(address)
  if (signal.aborted) frame.remove()
  signal.throwIfAborted()
  const inside = frame.contentWindow
  if (inside === null) return 'away'
  for (const [, rules = ''] of html.matchAll(STYLE)) adopt(inside, rules)
  for (const element of inside.document.querySelectorAll<HTMLElement>('[data-style]'))
    element.style.cssText = element.dataset['style'] ?? ''
  inside.print()
  return 'made'
}

function adopt(inside: Window, rules: string): void {
  const { CSSStyleSheet: Sheet } = inside.document.defaultView ?? globalThis
  const style = new Sheet()
  style.replaceSync(rules)
  inside.document.adoptedStyleSheets.push(style)
}

export async function saveSheet(draft: Draft, signal: AbortSignal): Promise<SheetOutcome> {
  const sheet = await askFor('/v1/design-check?format=pdf', draft, signal)
  if (!(sheet instanceof Blob)) return sheet
  save(sheet, `${fileName(draft)}.pdf`)
  return 'made'
}

export const saveDesign = (draft: Draft): void =>
  save(new Blob([JSON.stringify(draft, null, 2)], { type: 'application/json' }), `${fileName(draft)}.json`)

const fileName = (draft: Draft): string => {
  const words = String(valueAt(draft, '/name') ?? '')
    .toLowerCase()
    .match(/[\p{L}\p{N}]+/gu)
  return words?.slice(0, 8).join('-') ?? 'loudspeaker'
}

export function save(bytes: Blob, name: string): void {
  const address = URL.createObjectURL(bytes)
  const link = make('a', { href: address, download: name })
  link.click()
  setTimeout(() => URL.revokeObjectURL(address), 60_000)
}
