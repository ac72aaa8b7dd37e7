import type { CutListSections } from '../../schema/cut-list.ts'
import { ask, askFor, isAbort } from './ask.ts'
import { type Draft, type Json, valueAt } from './draft.ts'
import { button, make } from './make.ts'
import { save } from './sheet.ts'

const SECONDS = 10
const TAKEN = ['box', 'boxes', 'drivers', 'port', 'passiveRadiator', 'signal', 'supply', 'stock', 'workshop']

/** Looks for a cutting plan with less waste; shows how long it has looked, and can be stopped. */
export function longerSearch(design: () => Draft): HTMLElement {
  const said = make('div', { role: 'status' })
  const start = button('Look longer for a better cutting plan', () => void look())
  const place = make('div', { class: 'longer' }, start, said)

  async function look(): Promise<void> {
    const stopping = new AbortController()
    const bar = make('progress', { max: String(SECONDS), 'aria-label': 'Time looked' })
    const began = performance.now()
    const ticking = setInterval(() => {
      bar.value = Math.min(SECONDS, (performance.now() - began) / 1000)
    }, 200)
    start.disabled = true
    said.replaceChildren(
      bar,
      ' ',
      button('Stop', () => stopping.abort()),
    )
    try {
      said.replaceChildren(...(await found(cutListOf(design()), stopping.signal)))
    } catch (error) {
      if (!isAbort(error)) throw error
      said.replaceChildren('Stopped.')
    } finally {
      clearInterval(ticking)
      start.disabled = false
    }
  }
  return place
}

function cutListOf(draft: Draft): Draft {
  const parts = TAKEN.flatMap((name): [string, Json][] => {
    const value = valueAt(draft, `/${name}`)
    return value === undefined ? [] : [[name, value]]
  })
  return { ...Object.fromEntries(parts), effort: { seconds: SECONDS } }
}

async function found(request: Draft, signal: AbortSignal): Promise<(HTMLElement | string)[]> {
  const [reply, sheet] = await Promise.all([
    ask<CutListSections>('/v1/cut-list', request, signal),
    askFor('/v1/cut-list?format=pdf', request, signal),
  ])
  if ('faults' in reply) return [reply.faults.map(({ message }) => message).join(' ')]
  if ('away' in reply) return [reply.away]
  const { sheets, bound, largestOffcut } = reply.answer
  const offcut =
    largestOffcut === null
      ? ''
      : ` The largest offcut is ${Math.round(largestOffcut.lengthMm)} by ${Math.round(largestOffcut.widthMm)} mm.`
  const least = bound === null ? '' : `, no plan needs fewer than ${bound}`
  return [
    make('p', {}, `${sheets.length === 1 ? 'One board' : `${sheets.length} boards`}${least}.${offcut}`),
    ...(!(sheet instanceof Blob)
      ? []
      : [button('Save this cutting plan (PDF)', () => save(sheet, 'cutting-plan.pdf'))]),
  ]
}
