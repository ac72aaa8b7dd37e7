/** The design as it is being typed: numbers may still be text with a unit, and anything may be missing. */
export type Json = null | boolean | number | string | readonly Json[] | { readonly [name: string]: Json }
export type Draft = { readonly [name: string]: Json }

/** One step of a JSON Patch (RFC 6902), as the remedies of a finding bring them. */
export interface Change {
  op: 'add' | 'replace' | 'remove'
  path: string
  value?: unknown
}

type Branch = Exclude<Json, null | boolean | number | string>

/** Objects that a design has even while they are empty; every other one goes when its last member goes. */
const KEPT = [/^$/, /^\/(box|amplifier|supply)$/, /^\/(drivers|stock)\/\d+$/, /^\/drivers\/\d+\/parameters$/]

const isBranch = (value: Json | undefined): value is Branch => typeof value === 'object' && value !== null

const isList = (value: Branch): value is readonly Json[] => Array.isArray(value)

const namesIn = (pointer: string): string[] =>
  pointer
    .split('/')
    .slice(1)
    .map((name) => name.replaceAll('~1', '/').replaceAll('~0', '~'))

/** What stands at a JSON Pointer; undefined where nothing does. */
export function valueAt(draft: Json, pointer: string): Json | undefined {
  let value: Json | undefined = draft
  for (const name of namesIn(pointer)) value = isBranch(value) ? memberOf(value, name) : undefined
  return value
}

const memberOf = (branch: Branch, name: string): Json | undefined =>
  isList(branch) ? branch[Number(name)] : Object.hasOwn(branch, name) ? branch[name] : undefined

/** The draft with a value put at a pointer; the objects on the way are made. undefined takes the value out. */
export function withValue(draft: Draft, pointer: string, value: Json | undefined): Draft {
  const changed = changedBranch(draft, namesIn(pointer), value, '')
  return isBranch(changed) && !isList(changed) ? changed : {}
}

function changedBranch(
  before: Json | undefined,
  names: readonly string[],
  value: Json | undefined,
  at: string,
): Json | undefined {
  const [name, ...rest] = names
  if (name === undefined) return value
  const branch = branchFor(before, name)
  const member = changedBranch(memberOf(branch, name), rest, value, `${at}/${name}`)
  return isList(branch) ? changedList(branch, name, member) : changedObject(branch, name, member, at)
}

/** What stands there if it can take a member of this name, else an empty list or object that can. */
function branchFor(before: Json | undefined, name: string): Branch {
  const forList = /^(\d+|-)$/.test(name)
  if (!isBranch(before)) return forList ? [] : {}
  if (isList(before)) return forList ? before : {}
  return name === '-' ? [] : before
}

function changedList(list: readonly Json[], name: string, member: Json | undefined): readonly Json[] {
  if (name === '-') return member === undefined ? list : [...list, member]
  const index = Number(name)
  if (member === undefined) return list.filter((_, i) => i !== index)
  return index < list.length ? list.map((old, i) => (i === index ? member : old)) : [...list, member]
}

function changedObject(
  object: { readonly [name: string]: Json },
  name: string,
  member: Json | undefined,
  at: string,
): Json | undefined {
  const { [name]: _, ...others } = object
  if (member !== undefined) return { ...object, [name]: member }
  return Object.keys(others).length === 0 && !KEPT.some((kept) => kept.test(at)) ? undefined : others
}

/** The draft after the steps of a remedy. */
export const changed = (draft: Draft, changes: readonly Change[]): Draft =>
  changes.reduce(
    (now, { op, path, value }) =>
      op === 'add'
        ? added(now, path, plain(value))
        : withValue(now, path, op === 'remove' ? undefined : plain(value)),
    draft,
  )

/** What is added to a list goes before what stands there. */
function added(draft: Draft, path: string, value: Json): Draft {
  const end = path.lastIndexOf('/')
  const [parent, name] = [path.slice(0, end), path.slice(end + 1)]
  const list = valueAt(draft, parent)
  return Array.isArray(list) && /^\d+$/.test(name)
    ? withValue(draft, parent, list.toSpliced(Number(name), 0, value))
    : withValue(draft, path, value)
}

const plain = (value: unknown): Json => JSON.parse(JSON.stringify(value ?? null))

/** Every pointer that holds a value, for telling what a form does not show. */
export function leavesOf(value: Json, at = ''): string[] {
  if (!isBranch(value)) return [at]
  const members: [string, Json][] = isList(value)
    ? value.map((member, i) => [String(i), member])
    : Object.entries(value)
  return members.flatMap(([name, member]) =>
    leavesOf(member, `${at}/${name.replaceAll('~', '~0').replaceAll('/', '~1')}`),
  )
}

/** Letters of the longest design that is opened; the service takes no longer one. */
const MOST_LETTERS = 256 * 1024

/** No design is that deep; what is would break everything that walks through it. */
const MOST_DEPTH = 200

/** A design out of a file or a link; undefined for anything that is no JSON object. */
export function draftFrom(text: string): Draft | undefined {
  if (text.length > MOST_LETTERS) return undefined
  try {
    const read: Json = JSON.parse(text)
    return isBranch(read) && !isList(read) && isShallow(read) ? read : undefined
  } catch {
    return undefined
  }
}

/** Whether it ends within the depth of a design; level by level, for what is too deep cannot be walked into. */
function isShallow(value: Json): boolean {
  let level = [value]
  for (let depth = 0; depth < MOST_DEPTH && level.length > 0; depth += 1)
    level = level.filter(isBranch).flatMap((branch) => Object.values(branch))
  return level.length === 0
}
