import type { CutListSections } from '../../schema/cut-list.ts'
import { ask, askFor } from './ask.ts'
import { type Draft, type Json, valueAt } from './draft.ts'
import { driversOf } from './kinds.ts'
import { button, make } from './make.ts'
import { save } from './sheet.ts'

const SECONDS = 10
/** It may have to wait for the searches of others; it can be stopped. */
const PATIENCE_MS = 300_000
const TAKEN = ['box', 'boxes', 'drivers', 'port', 'passiveRadiator', 'signal', 'supply', 'stock', 'workshop']

/** The place of the search, and what it is told of the design. */
export interface LongerSearch {
  place: HTMLElement
  designChanged: () => void
  /** Another design, or none. */
  forget: () => void
}

/** Looks for a cutting plan with less waste; shows how long it has looked, and can be stopped. */
export function longerSearch(design: () => Draft): LongerSearch {
  const said = make('div', { role: 'status' })
  const start = button('Look longer for a better cutting plan', () => void look())
  const place = make('div', { class: 'longer' }, start, said)
  /** What is cut by the plan on show, or by the one that is looked for; empty when there is none. */
  let ofCut = ''
  let shown: (HTMLElement | string)[] = []
  let stopping = new AbortController()

  async function look(): Promise<void> {
    ofCut = cutIn(design())
    stopping = new AbortController()
    const bar = make('progress', { max: String(SECONDS), 'aria-label': 'Time looked' })
    const began = performance.now()
    const ticking = setInterval(() => {
      bar.value = Math.min(SECONDS, (performance.now() - began) / 1000)
    }, 200)
    const stop = button('Stop', () => stopping.abort('Stopped.'))
    const isHere = document.activeElement === start
    start.disabled = true
    said.replaceChildren(bar, ' ', stop)
    if (isHere) stop.focus()
    try {
      shown = await found(cutListOf(design()), stopping.signal)
    } catch (error) {
      if (!stopping.signal.aborted) throw error
      shown = [String(stopping.signal.reason)]
    } finally {
      clearInterval(ticking)
      start.disabled = false
    }
    if (said.contains(document.activeElement)) start.focus()
    said.replaceChildren(...shown)
  }

  /** A plan is on show while the design is the one that it was made for, and comes back with it. */
  function designChanged(): void {
    if (ofCut === '') return
    const isSame = cutIn(design()) === ofCut
    if (!start.disabled) said.replaceChildren(...(isSame ? shown : [EARLIER]))
    else if (!isSame) stopping.abort('Stopped: what is to be cut has changed.')
  }

  function forget(): void {
    stopping.abort('')
    ofCut = ''
    said.replaceChildren()
  }
  return { place, designChanged, forget }
}

const EARLIER = 'The plan found before was for other panels or boards; look again, or undo the change.'

/** What decides how the boards are cut; the sound of the drivers and the current of the supply do not. */
const CUT = [
  '/box',
  '/boxes',
  '/port',
  '/passiveRadiator',
  '/signal/volumeControl',
  '/supply/indicator',
  '/stock',
  '/workshop',
]
const CUT_OF_DRIVER = ['/count', '/frame', '/parameters/sdCm2']

const cutIn = (draft: Draft): string =>
  JSON.stringify([
    ...CUT.map((at) => valueAt(draft, at) ?? null),
    driversOf(draft).map((driver) => CUT_OF_DRIVER.map((at) => valueAt(driver, at) ?? null)),
  ])

function cutListOf(draft: Draft): Draft {
  const parts = TAKEN.flatMap((name): [string, Json][] => {
    const value = valueAt(draft, `/${name}`)
    return value === undefined ? [] : [[name, value]]
  })
  return { ...Object.fromEntries(parts), effort: { seconds: SECONDS } }
}

async function found(request: Draft, signal: AbortSignal): Promise<(HTMLElement | string)[]> {
  const [reply, sheet] = await Promise.all([
    ask<CutListSections>('/v1/cut-list', request, signal, PATIENCE_MS),
    askFor('/v1/cut-list?format=pdf', request, signal, PATIENCE_MS),
  ])
  if ('faults' in reply) return [reply.faults.map(({ message }) => message).join(' ')]
  if ('away' in reply) return [reply.away]
  const { sheets, bound, largestOffcut } = reply.answer
  const offcut =
    largestOffcut === null
      ? ''
      : ` The largest offcut is ${Math.round(largestOffcut.lengthMm)} by ${Math.round(largestOffcut.widthMm)} mm.`
  const least =
    bound === null
      ? ''
      : bound === sheets.length
        ? ', and no plan needs fewer'
        : `, no plan needs fewer than ${bound}`
  return [
    make('p', {}, `${sheets.length === 1 ? 'One board' : `${sheets.length} boards`}${least}.${offcut}`),
    ...(!(sheet instanceof Blob)
      ? []
      : [button('Save this cutting plan (PDF)', () => save(sheet, 'cutting-plan.pdf'))]),
  ]
}
