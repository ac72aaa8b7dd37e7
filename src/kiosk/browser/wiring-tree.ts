import type { Json } from './draft.ts'

type Joint = 'series' | 'parallel'

/** Kind and branches of a joint; undefined for a driver, a part, or what is no wiring at all. */
function jointIn(wiring: Json): { kind: Joint; branches: readonly Json[] } | undefined {
  if (typeof wiring !== 'object' || wiring === null || Array.isArray(wiring)) return undefined
  for (const [kind, branches] of Object.entries(wiring))
    if ((kind === 'series' || kind === 'parallel') && Array.isArray(branches)) return { kind, branches }
  return undefined
}

/** Single drivers and parts in the order they are written. */
const endsIn = (wiring: Json): Json[] => jointIn(wiring)?.branches.flatMap(endsIn) ?? [wiring]

/** Ids of the drivers, one for each place. */
export const namesIn = (wiring: Json): string[] => endsIn(wiring).filter((end) => typeof end === 'string')

/** Coils, capacitors and resistors in words. */
export const partsIn = (wiring: Json): string[] =>
  endsIn(wiring)
    .filter((end) => typeof end !== 'string')
    .map(partText)

/** How several drivers of a kind hang together: "2 × woofer in series". */
export function groupsIn(wiring: Json): string[] {
  const joint = jointIn(wiring)
  if (joint === undefined) return []
  const ends = endsIn(wiring)
  if (ends.length > 1 && ends.every((end) => typeof end === 'string' && end === ends[0]))
    return [wordsOf(wiring)]
  const alone = joint.branches.filter((branch) => typeof branch === 'string')
  const alike = [...new Set(alone)].map((id) => alone.filter((one) => one === id))
  return [
    ...alike.filter(({ length }) => length > 1).map((same) => wordsOf({ [joint.kind]: same })),
    ...joint.branches.flatMap(groupsIn),
  ]
}

/** What hangs side by side, or in a row. */
export function branchesOf(wiring: Json, kind: Joint): readonly Json[] {
  const joint = jointIn(wiring)
  return joint?.kind === kind ? joint.branches : [wiring]
}

/** Whether every driver of equal ones gets the same. */
export function isEven(wiring: Json): boolean {
  const branches = jointIn(wiring)?.branches ?? []
  return new Set(branches.map(wordsOf)).size < 2 && branches.every(isEven)
}

/** Whether all drivers of one kind get the same: what stands around each of them is alike. */
export function isFair(wiring: Json): boolean {
  const around = new Map<string, string>()
  return placesIn(wiring, '').every(([driver, place]) => {
    const first = around.get(driver) ?? place
    around.set(driver, first)
    return place === first
  })
}

/** Each driver, and in words what stands around it. */
function placesIn(wiring: Json, around: string): [string, string][] {
  const joint = jointIn(wiring)
  if (joint === undefined) return typeof wiring === 'string' ? [[wiring, around]] : []
  const { kind, branches } = joint
  return branches.flatMap((branch, own) => {
    const others = branches
      .filter((_, i) => i !== own)
      .map(wordsOf)
      .toSorted()
    return placesIn(branch, `${around}/${kind}: ${others.join(', ')}`)
  })
}

/** The wiring without a driver and without the parts that served it alone; undefined when no driver is left. */
export function without(wiring: Json, id: string): Json | undefined {
  const joint = jointIn(wiring)
  if (joint === undefined) return wiring === id ? undefined : wiring
  const left = joint.branches.map((branch) => without(branch, id)).filter((branch) => branch !== undefined)
  const [only] = left
  if (!left.some((branch) => namesIn(branch).length > 0)) return undefined
  return left.length === 1 ? only : { [joint.kind]: left }
}

/** The wiring in words, as the service words it; equal drivers are counted. */
export function wordsOf(wiring: Json): string {
  const joint = jointIn(wiring)
  if (joint === undefined) return typeof wiring === 'string' ? wiring : partText(wiring)
  const texts = joint.branches.map((branch) => {
    const text = wordsOf(branch)
    return jointIn(branch) === undefined ? text : `(${text})`
  })
  const counted = [...new Set(texts)].map((text) => {
    const times = texts.filter((one) => one === text).length
    return times === 1 ? text : `${times} × ${text}`
  })
  return `${counted.join(' and ')} in ${joint.kind}`
}

const UNITS: readonly [string, string][] = [
  ['resistorOhm', 'Ω resistor'],
  ['inductorMh', 'mH coil'],
  ['capacitorUf', 'µF capacitor'],
]

function partText(part: Json): string {
  const members: Record<string, unknown> = { ...(typeof part === 'object' ? part : {}) }
  const known = UNITS.find(([name]) => name in members)
  return known === undefined ? JSON.stringify(part) : `${members[known[0]]}\u00a0${known[1]}`
}
