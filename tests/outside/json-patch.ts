interface Step {
  op: string
  path: string
  value?: unknown
}

const isHolder = (value: unknown): value is object => typeof value === 'object' && value !== null

/** What a step changes: the last name of its pointer in what holds it. */
function placeOf(root: object, { op, path }: Step): { holder: object; name: string } {
  const names = path.split('/').map((name) => name.replaceAll('~1', '/').replaceAll('~0', '~'))
  const name = names.pop() ?? ''
  const holder = names.reduce<unknown>((at, member) => (isHolder(at) ? Reflect.get(at, member) : at), root)
  if (!isHolder(holder) || (op !== 'add' && !Object.hasOwn(holder, name)))
    throw new Error(`${op} ${path}: nothing there`)
  return { holder, name }
}

function changeList(list: unknown[], index: number, { op, path, value }: Step): void {
  if (!Number.isInteger(index) || index > list.length) throw new Error(`${op} ${path}: no such place`)
  list.splice(index, op === 'add' ? 0 : 1, ...(op === 'remove' ? [] : [structuredClone(value)]))
}

/** JSON Patch by RFC 6902: a copy of `document` after every step; throws where the RFC asks for an error. */
export function patched(document: unknown, steps: readonly Step[]): unknown {
  // A pointer begins with the empty name of the whole document (RFC 6901).
  const root = { '': structuredClone(document) }
  for (const step of steps) {
    const { holder, name } = placeOf(root, step)
    if (Array.isArray(holder)) changeList(holder, name === '-' ? holder.length : Number(name), step)
    else if (step.op === 'remove') Reflect.deleteProperty(holder, name)
    else Reflect.set(holder, name, structuredClone(step.value))
  }
  return root['']
}
