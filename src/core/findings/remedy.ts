import type { Fix, Json, PatchStep } from '../../schema/frame.ts'

/** What to do about a finding: in words, or as a change of the request besides. */
export type Remedy = string | Fix

export const isFix = (remedy: Remedy): remedy is Fix => typeof remedy !== 'string'

/** A remedy with its patch; in words alone when there is none. */
export const remedy = (text: string, patch: readonly PatchStep[] | null): Remedy =>
  patch === null || patch.length === 0 ? text : { do: text, patch: [...patch] }

/** Puts a value at a place whose parent exists, whether something stood there or not (RFC 6902, 4.1). */
export const put = (path: string, value: Json): PatchStep => ({ op: 'add', path, value })

/** Puts a figure where the contract has room for it, from least to most; null beyond. */
export const putWithin = (
  path: string,
  value: number,
  [least, most]: readonly [number, number],
): PatchStep[] | null => (value >= least && value <= most ? [put(path, value)] : null)

/** Takes out what stands at a place; only for what the request has (RFC 6902, 4.2). */
export const takeOut = (path: string): PatchStep => ({ op: 'remove', path })
