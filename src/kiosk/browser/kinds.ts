import { type Draft, type Json, valueAt } from './draft.ts'
import { namesIn } from './wiring-tree.ts'

/** One kind of driver as it hangs on a channel. */
export interface Kind {
  id: string
  /** How many of it hang on one channel; a fraction when the channels cannot share them. */
  each: number
  driver: Json
  ownBack: boolean
  /** NaN when not known. */
  fsHz: number
}

export const driversOf = (draft: Draft): readonly Json[] => {
  const list = valueAt(draft, '/drivers')
  return Array.isArray(list) ? list : []
}

export const nameOf = (draft: Draft, index: number): string =>
  String(valueAt(draft, `/drivers/${index}/id`) ?? `driver ${index + 1}`)

/** The kinds from bass to treble: first what shares the air of the box, then by resonance where it is known. */
export function kindsOf(draft: Draft): Kind[] {
  const boxes = Number(valueAt(draft, '/boxes') ?? 1)
  const channelsPerBox = Number(valueAt(draft, '/amplifier/channels') ?? boxes) / boxes
  const kinds = driversOf(draft).map((driver, index) => {
    const at = (name: string) => valueAt(draft, `/drivers/${index}/${name}`)
    return {
      id: nameOf(draft, index),
      each: Number(at('count') ?? 1) / channelsPerBox,
      driver,
      ownBack: at('sharesBox') === false,
      fsHz:
        Number.parseFloat(String(at('parameters/fsHz'))) *
        (/khz/i.test(String(at('parameters/fsHz'))) ? 1000 : 1),
    }
  })
  return kinds.sort((a, b) => Number(a.ownBack) - Number(b.ownBack) || a.fsHz - b.fsHz || 0)
}

/** Whether a wiring has a place for each of these drivers and for no other. */
export function fits(wiring: Json, kinds: readonly Kind[]): boolean {
  const names = namesIn(wiring)
  return (
    kinds.every(({ id, each }) => names.filter((name) => name === id).length === each) &&
    names.every((name) => kinds.some(({ id }) => id === name))
  )
}
