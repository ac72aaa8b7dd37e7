import type { Wiring } from '../../schema/wiring.ts'

/** Deepest nesting and most parts that a wiring may have; far beyond anything with terminals to solder. */
export const DEEPEST_WIRING = 24
export const MOST_PARTS = 128

/** A part that is not a branch, and where it stands in the wiring. */
export interface Part {
  /** JSON Pointer from the root of the wiring, '' for the root itself. */
  pointer: string
  part: Exclude<Wiring, { series: Wiring[] } | { parallel: Wiring[] }>
}

/** Every single part in the order it is written; branches nested deeper than allowed are left out. */
export function partsOf(wiring: Wiring): Part[] {
  const parts: Part[] = []
  collect(wiring, '', 0, parts)
  return parts
}

function collect(wiring: Wiring, pointer: string, depth: number, parts: Part[]): void {
  if (depth > DEEPEST_WIRING) return
  if (typeof wiring === 'string') parts.push({ pointer, part: wiring })
  else if ('series' in wiring) collectBranches(wiring.series, `${pointer}/series`, depth, parts)
  else if ('parallel' in wiring) collectBranches(wiring.parallel, `${pointer}/parallel`, depth, parts)
  else parts.push({ pointer, part: wiring })
}

function collectBranches(branches: readonly Wiring[], pointer: string, depth: number, parts: Part[]): void {
  for (const [index, branch] of branches.entries()) collect(branch, `${pointer}/${index}`, depth + 1, parts)
}

/** Whether some branch lies deeper than allowed. */
export function isTooDeep(wiring: Wiring, depth = 0): boolean {
  if (typeof wiring === 'string') return false
  if (depth > DEEPEST_WIRING) return true
  const branches = 'series' in wiring ? wiring.series : 'parallel' in wiring ? wiring.parallel : []
  return branches.some((branch) => isTooDeep(branch, depth + 1))
}

/** Ids of the drivers in the order they are written, one entry a driver. */
export const driverIdsOf = (wiring: Wiring): string[] =>
  partsOf(wiring).flatMap(({ part }) => (typeof part === 'string' ? [part] : []))

/** How many drivers of each id the wiring names. */
export function driverCountsOf(wiring: Wiring): Map<string, number> {
  const counts = new Map<string, number>()
  for (const id of driverIdsOf(wiring)) counts.set(id, (counts.get(id) ?? 0) + 1)
  return counts
}

/** The wiring in words: "main and main in series". Branches of branches go in brackets. */
export function wiringText(wiring: Wiring): string {
  if (typeof wiring === 'string') return wiring
  if ('series' in wiring) return jointText('series', wiring.series)
  if ('parallel' in wiring) return jointText('parallel', wiring.parallel)
  if ('resistorOhm' in wiring) return `${wiring.resistorOhm} ohm`
  return 'inductorMh' in wiring ? `${wiring.inductorMh} mH` : `${wiring.capacitorUf} uF`
}

function jointText(kind: 'series' | 'parallel', branches: readonly Wiring[]): string {
  const names = branches.map((branch) => {
    const isJoint = typeof branch !== 'string' && ('series' in branch || 'parallel' in branch)
    return isJoint && branches.length > 1 ? `(${wiringText(branch)})` : wiringText(branch)
  })
  return names.length === 1 ? names.join('') : `${names.join(' and ')} in ${kind}`
}
