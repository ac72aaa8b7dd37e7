import { askFor } from './ask.ts'
import { type Draft, valueAt } from './draft.ts'
import { make } from './make.ts'

/** Prints the build sheet from a frame of its own, so that the page itself stays as it is. */
export async function printSheet(draft: Draft, signal: AbortSignal): Promise<boolean> {
  const sheet = await askFor('/v1/design-check?format=html', draft, signal)
  if (sheet === undefined) return false
  document.getElementById('sheet')?.remove()
  const address = URL.createObjectURL(sheet)
  const frame = make('iframe', { id: 'sheet', title: 'Build sheet', src: address })
  const loaded = new Promise((done) => frame.addEventListener('load', done))
  document.body.append(frame)
  await loaded
  URL.revokeObjectURL(address)
  frame.contentWindow?.print()
  return true
}

export async function saveSheet(draft: Draft, signal: AbortSignal): Promise<boolean> {
  const sheet = await askFor('/v1/design-check?format=pdf', draft, signal)
  if (sheet !== undefined) save(sheet, `${fileName(draft)}.pdf`)
  return sheet !== undefined
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
