import type { Design } from '../../schema/design.ts'
import { type Draft, draftFrom } from './draft.ts'

/** What tells a design from other files; a name or a note of the air is in many. */
const OWN: readonly (keyof Design)[] = [
  'boxes',
  'drivers',
  'wiring',
  'box',
  'port',
  'passiveRadiator',
  'amplifier',
  'supply',
  'signal',
  'programme',
  'stock',
  'workshop',
  'wants',
]

/** A design out of a file or a link; undefined for an object that has nothing of one. */
export function designFrom(text: string): Draft | undefined {
  const draft = draftFrom(text)
  return draft !== undefined && OWN.some((name) => Object.hasOwn(draft, name)) ? draft : undefined
}
