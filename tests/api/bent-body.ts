import fc, { type Arbitrary } from 'fast-check'
import { isRecord } from '../../src/api/schema-node.ts'

/** What people and programs put into fields by mistake. */
const ODD = [
  null,
  true,
  '',
  'none',
  '3 kg',
  '1e999',
  '1/0 in',
  '6 1/4 in',
  -1,
  0,
  1e-300,
  1e300,
  0.1,
  7,
  [],
  {},
  [[]],
  'μ',
  '__proto__',
]

/** A body with one to three places swapped, dropped or added to. */
export const bent = (example: unknown): Arbitrary<unknown> => {
  const places = placesOf(example)
  const change = fc.tuple(
    fc.constantFrom(...places),
    fc.constantFrom('swap', 'drop', 'add'),
    fc.constantFrom(...ODD),
  )
  return fc.array(change, { minLength: 1, maxLength: 3 }).map((changes) => {
    const body = structuredClone(example)
    for (const [place, how, odd] of changes) changeAt(body, place, how, odd)
    return body
  })
}

function placesOf(value: unknown, path: string[] = []): string[][] {
  if (typeof value !== 'object' || value === null) return [path]
  const below = Object.entries(value).flatMap(([name, member]) => placesOf(member, [...path, name]))
  return path.length === 0 ? below : [path, ...below]
}

function changeAt(body: unknown, path: readonly string[], how: string, odd: unknown): void {
  const holder = valueAt(body, path.slice(0, -1))
  const name = path.at(-1) ?? ''
  if (typeof holder !== 'object' || holder === null) return
  if (how === 'drop') Reflect.deleteProperty(holder, name)
  // A copy, or the next change would bend the odd thing itself, and put it into itself.
  else Reflect.set(holder, how === 'swap' ? name : `${name}X`, structuredClone(odd))
}

/** What nobody means well: any JSON, nests, long texts, long lists, names that are members of every object. */
export const hostile = (example: unknown): Arbitrary<unknown> => {
  const nest = (depth: number): unknown => (depth === 0 ? 1 : [nest(depth - 1)])
  const poison = fc.oneof(
    fc.jsonValue(),
    fc.integer({ min: 20, max: 60 }).map(nest),
    fc.integer({ min: 500, max: 3000 }).map((length) => Array.from({ length }, (_, i) => i)),
    fc.integer({ min: 1000, max: 20_000 }).map((length) => '9'.repeat(length)),
    fc.constantFrom('\ud800', '\u0000', '‮', '{{7*7}}', '=cmd()', '1 mm; 2 mm', 'e', 'i', 'mm mm', '2^2^9 mm'),
    fc.constantFrom('constructor', 'toString', 'hasOwnProperty').map((name) => ({ [name]: 1 })),
  )
  const places = placesOf(example)
  const within = fc.tuple(fc.constantFrom(...places), poison).map(([place, odd]) => {
    const body = structuredClone(example)
    changeAt(body, place, 'swap', odd)
    return body
  })
  return fc.oneof(poison, within)
}

/** A body that mostly fits: some of its numbers are several times as large or small, so that other things happen. */
export const turned = (example: unknown): Arbitrary<unknown> => {
  const numbers = placesOf(example).filter((place) => typeof valueAt(example, place) === 'number')
  const turn = fc.tuple(
    fc.constantFrom(...numbers),
    fc.double({ min: -1, max: 1, noNaN: true }).map((digits) => 10 ** digits),
  )
  return fc.array(turn, { minLength: 1, maxLength: 4 }).map((turns) => {
    const body = structuredClone(example)
    for (const [place, factor] of turns) {
      const value = Number(valueAt(body, place))
      const other = Number((value * factor).toPrecision(4))
      changeAt(body, place, 'swap', Number.isInteger(value) && value < 50 ? Math.round(other) : other)
    }
    return body
  })
}

const valueAt = (value: unknown, path: readonly string[]): unknown =>
  path.reduce(
    (inner: unknown, name) =>
      isRecord(inner) || Array.isArray(inner) ? Reflect.get(inner, name) : undefined,
    value,
  )
