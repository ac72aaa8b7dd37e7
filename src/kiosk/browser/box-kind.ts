import { type Draft, type Json, valueAt, withValue } from './draft.ts'

/** What belongs to one kind of box alone, and what it begins with. */
const OWN: readonly { kind: string; at: string; start: Json }[] = [
  { kind: 'vented', at: '/port', start: { innerDiameterMm: 35, tuningHz: 80 } },
  { kind: 'passive-radiator', at: '/passiveRadiator', start: {} },
]

/** The design with another kind of box: what the other kinds need goes, and comes back as it was at the last step that had it. */
export const boxOfKind = (draft: Draft, kind: Json | undefined, past: readonly Draft[]): Draft =>
  OWN.reduce(
    (now, { kind: owner, at, start }) => {
      if (owner !== kind) return withValue(now, at, undefined)
      return valueAt(now, at) === undefined ? withValue(now, at, lastOf(past, at) ?? start) : now
    },
    withValue(draft, '/box/kind', kind),
  )

const lastOf = (past: readonly Draft[], at: string): Json | undefined =>
  past.map((draft) => valueAt(draft, at)).findLast((value) => value !== undefined)
